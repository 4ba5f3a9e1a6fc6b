import { transaction } from '@/lib/db/transaction';
import type { ByStaff } from '@/lib/jobs/actor';
import { UNRULED_STAGES } from '@/lib/jobs/rules/stage-sets';
import { writeEvent } from '@/lib/jobs/write-event';
import { Refusal } from '@/lib/outcome';
import { writeWatch } from '@/lib/returns/write-watch';
import type { Cause, Ruling } from './rules/causes';
import { isDoneAsCovered } from './rules/done-as-covered';
import { isOtherUnit } from './rules/other-unit';
import { repairAfterAll } from './rules/repair-after-all';
import {
  type AlsoFound,
  isCoveredAtLeastPartly,
  mayRule,
  type RulingNeed,
  SHORTEST_REASON,
} from './rules/ruling';
import { toldAtOnceSentence } from './rules/ruling-sentences';
import { RULED_JOB, tellRuling } from './write-ruling-told';

export type RulingRequest = ByStaff & {
  claimId: string;
  jobVersion: number;
  cause: Cause;
  alsoFound: AlsoFound | null;
  isEvidenceClear: boolean;
  /** a person lets a claim in that came after cover had ended; null where they were not asked, or did not say */
  isLetIn: boolean | null;
  /** whoever rules was asked whether the customer may be told at once, and said yes */
  mayTell: boolean;
  reasonText: string;
  lesson: string;
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

export const SERIAL_OPEN =
  'It is not settled which unit this is: the serial read is not the certificate’s. Settle it on the job sheet first.';

const OTHER_UNIT =
  'The serial of this unit is another one than the certificate’s, and cover follows the unit. Rule it as a separate fault, or settle the serial first.';

const DONE =
  'What was covered is repaired already, as the customer was told, and that stands. Rule it covered, or partly covered where something else is broken beside it.';

/** Refuses a ruling that covers nothing of what was repaired as covered: it would stand on no certificate. */
export function requireWhatWasDone(
  events: Parameters<typeof isDoneAsCovered>[0],
  ruling: Ruling,
  field?: 'cause',
): void {
  if (!isCoveredAtLeastPartly(ruling) && isDoneAsCovered(events)) throw new Refusal('invalid', DONE, field);
}

/**
 * Rules on a claim by the table of causes. Covered is final at once and told to the customer, so it is asked about once; anything else waits for
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
        job: { select: { ...RULED_JOB, serialTyped: true } },
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
    const isOther = isOtherUnit(claim.certificate.serialTyped, claim.job.serialTyped);
    if (isOther && isCoveredAtLeastPartly(decision.ruling)) throw new Refusal('invalid', OTHER_UNIT, 'cause');
    if (!isOther) requireWhatWasDone(claim.job.events, decision.ruling, 'cause');
    const isFinal = decision.allowed;
    if (isFinal && !o.mayTell) throw new Refusal('invalid', toldAtOnceSentence(decision), 'mayTell');
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
      await tellRuling(tx, { ...claim, ...o, ruling });
    }
    return { ruling: decision.ruling, isFinal };
  });
}
