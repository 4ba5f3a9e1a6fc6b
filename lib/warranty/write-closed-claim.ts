import type { Tx } from '@/lib/db/transaction';
import type { JobRecord } from '@/lib/jobs/records';

/**
 * Ends the claim that a job works on, with what it cost: the minutes and parts recorded on the job, and the postage, in minor
 * units. Without it the certificate could not be claimed from again. Nothing for a job without a claim.
 */
export async function closeClaim(tx: Tx, job: JobRecord, o: { postage: number; now: Date }): Promise<void> {
  if (!job.claim) return;
  await tx.claim.update({
    where: { id: job.claim.id },
    data: {
      state: 'closed',
      closedAt: o.now,
      costMinutes: job.work.reduce((sum, entry) => sum + entry.minutes, 0),
      costPartsMinor: job.partUses.reduce((sum, use) => sum + use.quantity * use.unitCostMinor, 0),
      costPostageMinor: o.postage,
    },
  });
}
