import { transaction } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import { readStage } from '@/lib/jobs/records';
import { isRepaired } from '@/lib/jobs/rules/repaired';
import { UNRULED_STAGES } from '@/lib/jobs/rules/stage-sets';
import { moveOf } from '@/lib/jobs/rules/stages';
import { writeEvent } from '@/lib/jobs/write-event';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { writeWatch } from '@/lib/returns/write-watch';
import { agreedGross, makeFreeAgain } from './free-again';
import { CAUSES, type Cause, RULINGS, type Ruling } from './rules/causes';
import { isOtherUnit } from './rules/other-unit';
import {
  type AlsoFound,
  afterCover,
  isCoveredAtLeastPartly,
  mayContest,
  mayRule,
  type RulingNeed,
  SHORTEST_REASON,
} from './rules/ruling';
import { writeOwnRepair } from './write-own-repair';

export type RulingRequest = {
  claimId: string;
  jobVersion: number;
  cause: Cause;
  alsoFound: AlsoFound | null;
  isEvidenceClear: boolean;
  /** a person lets a claim in that came after cover had ended; null where they were not asked, or did not say */
  isLetIn: boolean | null;
  reasonText: string;
  lesson: string;
  actor: Extract<Actor, { id: string }>;
  now: Date;
};

const MISSING: Record<Exclude<RulingNeed, 'owner-second-look'>, { sentence: string; field: string }> = {
  'evidence-photo': {
    sentence: 'A ruling other than covered needs a photo in the inspection that shows why.',
    field: 'cause',
  },
  'written-reason': {
    sentence: `Write the reason in words the customer can follow, ${SHORTEST_REASON} characters or more.`,
    field: 'reasonText',
  },
};

const LET_IN_OR_NOT = 'Choose whether this claim, which came after cover had ended, is let in.';

const SERIAL_OPEN =
  'It is not settled which unit this is: the serial read is not the certificate’s. Settle it on the job sheet first.';

const OTHER_UNIT =
  'The serial of this unit is another one than the certificate’s, and cover follows the unit. Rule it as a separate fault, or settle the serial first.';

/**
 * Rules on a claim by the table of causes. Covered is final at once and told to the customer; anything else waits for
 * the owner's second look and is not told before it. The job's version is checked, so that a ruling made while the
 * customer contests, or a colleague rules, does not overwrite what it never saw.
 */
export async function ruleOnClaim(o: RulingRequest): Promise<{ ruling: string; isFinal: boolean }> {
  return transaction(async (tx) => {
    const claim = await tx.claim.findUnique({
      where: { id: o.claimId },
      select: {
        number: true,
        certificateNumber: true,
        jobId: true,
        state: true,
        isLate: true,
        contestedAt: true,
        inspection: { select: { photoId: true } },
        certificate: { select: { serialTyped: true } },
        job: { select: { ...MOVED, serialTyped: true, customer: { select: { email: true } } } },
      },
    });
    if (!claim) throw new Refusal('not-found', 'There is no claim with this number.');
    if (claim.state !== 'open') throw new Refusal('conflict', 'This claim is ruled already.');
    if (!claim.job.isSerialSettled) throw new Refusal('invalid', SERIAL_OPEN, 'cause');
    if (claim.isLate && o.isLetIn === null) throw new Refusal('invalid', LET_IN_OR_NOT, 'letIn');
    const decision = mayRule({
      cause: o.cause,
      alsoFound: o.alsoFound,
      isEvidenceClear: o.isEvidenceClear,
      evidencePhotos: claim.inspection.filter((entry) => entry.photoId !== null).length,
      isWithinTerm: !claim.isLate || o.isLetIn === true,
      reasonText: o.reasonText,
      secondLook: null,
    });
    const missing = decision.allowed ? [] : decision.missing;
    for (const need of missing) {
      if (need === 'owner-second-look') continue;
      throw new Refusal('invalid', MISSING[need].sentence, MISSING[need].field);
    }
    if (
      isOtherUnit(claim.certificate.serialTyped, claim.job.serialTyped) &&
      isCoveredAtLeastPartly(decision.ruling)
    ) {
      throw new Refusal('invalid', OTHER_UNIT, 'cause');
    }
    const isFinal = decision.allowed;
    const letIn = claim.isLate && o.isLetIn !== null ? { isLetIn: o.isLetIn } : {};
    await writeEvent(tx, {
      jobId: claim.jobId,
      actor: o.actor,
      now: o.now,
      expected: { version: o.jobVersion, stages: UNRULED_STAGES },
      ...(isFinal ? repairAfterAll(claim.job, decision.ruling) : {}),
      event: {
        kind: 'claim-ruled',
        data: { claim: claim.number, cause: o.cause, ruling: decision.ruling, isFinal, ...letIn },
      },
    });
    await tx.claim.update({
      where: { id: o.claimId },
      data: {
        state: isFinal ? 'ruled' : 'open',
        cause: o.cause,
        alsoFound: o.alsoFound,
        ruling: decision.ruling,
        isEvidenceClear: o.isEvidenceClear,
        isLetIn: letIn.isLetIn ?? null,
        reasonText: o.reasonText,
        lesson: o.lesson,
        ruledAt: o.now,
        ruledBy: o.actor.id,
        secondLookAt: null,
        secondLookBy: null,
      },
    });
    await writeWatch(tx, [claim.certificateNumber]);
    if (isFinal) {
      const { ruling } = decision;
      await writeOwnRepair(tx, { ...claim, ...o, ruling });
      if (ruling !== 'not-covered')
        await makeFreeAgain(tx, { ...o, jobId: claim.jobId, claim: claim.number, ruling });
      await queueMail(tx, {
        template: 'claim-ruled',
        data: {
          claimNumber: claim.number,
          ruling: decision.ruling,
          cause: o.cause,
          reasonText: o.reasonText,
          mayContest: false,
          ...(await agreedGross(tx, claim.jobId)),
        },
        to: claim.job.customer.email,
        jobId: claim.jobId,
        now: o.now,
      });
    }
    return { ruling: decision.ruling, isFinal };
  });
}

/** The owner's second look at a ruling other than covered: confirmed it is told to the customer, else it is undone. */
export async function lookAgain(o: {
  claimId: string;
  jobVersion: number;
  isConfirmed: boolean;
  actor: Extract<Actor, { id: string }>;
  now: Date;
}): Promise<void> {
  if (o.actor.kind !== 'owner') throw new Refusal('not-allowed', 'The second look is the owner’s.');
  await transaction(async (tx) => {
    const claim = await tx.claim.findUnique({
      where: { id: o.claimId },
      select: {
        number: true,
        certificateNumber: true,
        jobId: true,
        state: true,
        cause: true,
        ruling: true,
        reasonText: true,
        isLetIn: true,
        contestedAt: true,
        job: { select: { ...MOVED, customer: { select: { email: true } } } },
      },
    });
    if (!claim) throw new Refusal('not-found', 'There is no claim with this number.');
    if (claim.state !== 'open' || claim.ruling === null || claim.cause === null) {
      throw new Refusal('conflict', 'There is no ruling that waits for a second look.');
    }
    if (o.isConfirmed && !claim.job.isSerialSettled) throw new Refusal('invalid', SERIAL_OPEN);
    const ruling = RULINGS.find((known) => known === claim.ruling);
    await writeEvent(tx, {
      jobId: claim.jobId,
      actor: o.actor,
      now: o.now,
      expected: { version: o.jobVersion },
      ...(o.isConfirmed && ruling ? repairAfterAll(claim.job, ruling) : {}),
      event: { kind: 'claim-second-look', data: { claim: claim.number, isConfirmed: o.isConfirmed } },
    });
    if (!o.isConfirmed) {
      await tx.claim.update({
        where: { id: o.claimId },
        data: { cause: null, alsoFound: null, ruling: null, isLetIn: null, ruledAt: null, ruledBy: null },
      });
      return;
    }
    await tx.claim.update({
      where: { id: o.claimId },
      data: { state: 'ruled', secondLookAt: o.now, secondLookBy: o.actor.id },
    });
    await writeWatch(tx, [claim.certificateNumber]);
    const cause = CAUSES.find((known) => known === claim.cause);
    const isAfter = ruling && cause ? afterCover({ ruling, cause, isLetIn: claim.isLetIn }) : null;
    if (ruling !== undefined) await writeOwnRepair(tx, { ...claim, ...o, ruling });
    if (ruling !== undefined && ruling !== 'not-covered')
      await makeFreeAgain(tx, { ...o, jobId: claim.jobId, claim: claim.number, ruling });
    await queueMail(tx, {
      template: 'claim-ruled',
      data: {
        claimNumber: claim.number,
        ruling: claim.ruling,
        cause: claim.cause,
        reasonText: claim.reasonText ?? '',
        mayContest:
          ruling !== undefined && mayContest({ ruling, timesContested: claim.contestedAt ? 1 : 0 }).allowed,
        ...(isAfter && { afterCover: isAfter }),
        ...(await agreedGross(tx, claim.jobId)),
      },
      to: claim.job.customer.email,
      jobId: claim.jobId,
      now: o.now,
    });
  });
}

const MOVED = {
  stage: true,
  isSerialSettled: true,
  events: { orderBy: { version: 'asc' }, select: { fromStage: true, toStage: true } },
} as const;

type Moved = { stage: string; events: Parameters<typeof isRepaired>[0] };

/**
 * What a ruling that covers something changes on a job whose unit is on its way back unrepaired: it is taken up again. Only a
 * customer who contested a ruling and then withdrew from a paid repair leaves a claim to be ruled on there.
 */
function repairAfterAll({ stage, events }: Moved, ruling: Ruling) {
  if (!isCoveredAtLeastPartly(ruling)) return {};
  const from = readStage(stage);
  const { from: stages, to } = moveOf('repair-after-all');
  // A price for the rest can be agreed to, and withdrawn from, anew.
  const set = { withdrawnAt: null };
  return stages.includes(from) && !isRepaired(events)
    ? { from, to, set: { ...set, readyAt: null } }
    : { set };
}
