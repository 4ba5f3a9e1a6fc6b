import { transaction } from '@/lib/db/transaction';
import type { ByStaff } from '@/lib/jobs/actor';
import { writeEvent } from '@/lib/jobs/write-event';
import { Refusal } from '@/lib/outcome';
import { writeWatch } from '@/lib/returns/write-watch';
import { requireWhatWasDone, SERIAL_OPEN } from './rule-on-claim';
import { isOtherUnit } from './rules/other-unit';
import { repairAfterAll } from './rules/repair-after-all';
import { readRuling } from './stored-ruling';
import { RULED_JOB, tellRuling } from './write-ruling-told';

/** The owner's second look at a ruling other than covered: confirmed it is told to the customer, else it is undone. */
export async function takeSecondLook(
  o: ByStaff & { claimId: string; jobVersion: number; isConfirmed: boolean },
): Promise<void> {
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
        secondLookAt: true,
        reasonText: true,
        isLetIn: true,
        contestedAt: true,
        certificate: { select: { serialTyped: true } },
        job: { select: { ...RULED_JOB, serialTyped: true } },
      },
    });
    if (!claim) throw new Refusal('not-found', 'There is no claim with this number.');
    const ruled = readRuling(claim);
    if (claim.state !== 'open' || !ruled) {
      throw new Refusal('conflict', 'There is no ruling that waits for a second look.');
    }
    if (o.isConfirmed && !claim.job.isSerialSettled) throw new Refusal('invalid', SERIAL_OPEN);
    const isOther = isOtherUnit(claim.certificate.serialTyped, claim.job.serialTyped);
    if (o.isConfirmed && !isOther) requireWhatWasDone(claim.job.events, ruled.ruling);
    await writeEvent(tx, {
      jobId: claim.jobId,
      actor: o.actor,
      now: o.now,
      expected: { version: o.jobVersion },
      ...(o.isConfirmed ? repairAfterAll(claim.job, ruled.ruling) : {}),
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
    await tellRuling(tx, { ...claim, ...ruled, ...o, reasonText: claim.reasonText ?? '' });
  });
}
