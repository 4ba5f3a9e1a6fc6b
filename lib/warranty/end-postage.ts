import { transaction } from '@/lib/db/transaction';
import { keptRefunds } from '@/lib/invoices/stored-refunds';
import type { OnJob } from '@/lib/jobs/actor';
import { writeEvent } from '@/lib/jobs/write-event';
import { lockJob } from '@/lib/jobs/write-lock';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { POSTAGE_OF_CLAIM, readPostageStanding } from './stored-postage';
import { paidBack } from './write-closed-claim';

const JOB = {
  customer: { select: { email: true, erasedAt: true } },
  payments: { select: { amountMinor: true, purpose: true } },
} as const;

/**
 * Staff end the question of a claim's postage without paying, because its customer wants none or it was settled otherwise. Who had
 * asked for it is told so by mail, with the reason; who had not is not written to. Their page says so to both.
 */
export async function endPostage(
  o: OnJob & {
    /** in words for the customer */
    reason: string;
  },
): Promise<void> {
  await transaction(async (tx) => {
    await lockJob(tx, o.jobId);
    const claim = await tx.claim.findUnique({
      where: { jobId: o.jobId },
      select: { ...POSTAGE_OF_CLAIM, job: { select: JOB } },
    });
    const standing = readPostageStanding(claim);
    if (!claim || (standing !== 'asked' && standing !== 'to-ask')) {
      throw new Refusal('conflict', 'No postage is to be paid back on this job, or not any more.');
    }
    await writeEvent(tx, {
      jobId: o.jobId,
      actor: o.actor,
      now: o.now,
      expected: { version: o.version },
      event: { kind: 'postage-ended', data: { claim: claim.number, reason: o.reason } },
    });
    await tx.claim.update({ where: { jobId: o.jobId }, data: { postageState: 'not-wanted' } });
    if (standing === 'to-ask' || claim.job.customer.erasedAt) return;
    const paid = paidBack(claim.job);
    await queueMail(tx, {
      template: 'postage-ended',
      data: {
        claimNumber: claim.number,
        amount: claim.postageMinor ?? 0,
        ...(paid > 0 && { paid }),
        reason: o.reason,
      },
      to: claim.job.customer.email,
      jobId: o.jobId,
      now: o.now,
    });
  });
  keptRefunds.forget();
}
