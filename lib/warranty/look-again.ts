import { transaction } from '@/lib/db/transaction';
import type { ByStaff } from '@/lib/jobs/actor';
import { asShown, requireMove } from '@/lib/jobs/facts';
import { readJob } from '@/lib/jobs/records';
import { lockJob } from '@/lib/jobs/write-lock';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { readWorkshop } from '@/lib/workshop/records';
import { openedAgainFacts } from './opened-again-facts';
import { OPENED_AGAIN, writeOpenedAgain } from './write-opened-again';

/**
 * The owner takes back a ruling that the customer was told and that turned out to be wrong, for instance where a unit without a fault
 * fails in its last test. The claim opens again as after a contest, which the customer still has; they read the reason.
 */
export async function lookAgain(
  o: ByStaff & {
    claimId: string;
    jobVersion: number;
    /** in words for the customer */
    reason: string;
  },
): Promise<void> {
  await transaction(async (tx) => {
    const claim = await tx.claim.findUnique({
      where: { id: o.claimId },
      select: { ...OPENED_AGAIN, contestedAt: true },
    });
    if (!claim) throw new Refusal('not-found', 'There is no claim with this number.');
    await lockJob(tx, claim.job.id);
    const job = asShown(await readJob({ id: claim.job.id }, tx), o.jobVersion, 'Nothing was taken back.');
    requireMove(job, 'look-again', o.actor);
    const workshop = await readWorkshop(tx);
    const { reason, now } = o;
    const opened = await writeOpenedAgain(tx, {
      ...o,
      claim,
      move: 'look-again',
      event: { kind: 'claim-reopened', data: { claim: claim.number, reason } },
      set: { reopenedAt: now },
      workshop,
    });
    if (!opened) throw new Refusal('conflict', 'There is no ruling to look at again.');
    await queueMail(tx, {
      template: 'claim-reopened',
      data: {
        claimNumber: claim.number,
        reason,
        ...openedAgainFacts(job, opened, { workshop, now }),
        mayContest: claim.contestedAt === null,
      },
      to: job.customer.email,
      jobId: job.id,
      now,
    });
  });
}
