import { transaction } from '@/lib/db/transaction';
import { keptRefunds } from '@/lib/invoices/stored-refunds';
import { writeEvent } from '@/lib/jobs/write-event';
import { lockJob } from '@/lib/jobs/write-lock';
import { type NewPhoto, writePhotos } from '@/lib/jobs/write-photos';
import { Refusal } from '@/lib/outcome';
import { postageProblem } from './rules/postage';
import { POSTAGE_OF_CLAIM, readPostageStanding } from './stored-postage';

const CUSTOMER = { kind: 'customer' } as const;

/**
 * The customer of a covered claim asks for what posting the unit cost them: the amount in minor units, a photo of the receipt, and
 * where the money is to go. It then waits among the money to give back. Sent twice with the same amount it is asked for once.
 */
export async function askPostage(o: {
  jobId: string;
  amount: number;
  /** in their words */
  to: string;
  /** stored already, and not yet tied to anything */
  photos: readonly NewPhoto[];
  now: Date;
}): Promise<void> {
  await transaction(async (tx) => {
    await lockJob(tx, o.jobId);
    const claim = await tx.claim.findUnique({ where: { jobId: o.jobId }, select: POSTAGE_OF_CLAIM });
    if (!claim) throw new Refusal('not-found', 'There is no claim on this job.');
    const standing = readPostageStanding(claim);
    if (standing === 'asked' && claim.postageMinor === o.amount) return;
    const problem = postageProblem(standing);
    if (problem !== null) throw new Refusal('conflict', problem);
    if (o.amount <= 0) throw new Refusal('invalid', 'Enter what the postage cost you', 'amount');
    if (o.photos.length === 0) throw new Refusal('invalid', NO_RECEIPT, 'photos');
    await writePhotos(tx, {
      jobId: o.jobId,
      purpose: 'receipt',
      photos: o.photos,
      actor: CUSTOMER,
      now: o.now,
    });
    await tx.claim.update({
      where: { jobId: o.jobId },
      data: { postageState: 'asked', postageMinor: o.amount, postageTo: o.to, postageAskedAt: o.now },
    });
    await writeEvent(tx, {
      jobId: o.jobId,
      actor: CUSTOMER,
      now: o.now,
      event: { kind: 'postage-asked', data: { claim: claim.number, amount: o.amount } },
    });
  });
  keptRefunds.forget();
}

const NO_RECEIPT = 'Add a photo of the receipt. You have none any more? Write to us under Messages.';
