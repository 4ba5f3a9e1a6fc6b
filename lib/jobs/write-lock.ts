import type { Tx } from '@/lib/db/transaction';

/**
 * Waits for whoever else writes this job, and keeps others waiting until the transaction ends. Whoever locks more than one row locks
 * the job first, so that none waits in a circle.
 */
export async function lockJob(tx: Tx, jobId: string): Promise<void> {
  await tx.$queryRaw`SELECT 1 FROM "job" WHERE "id" = ${jobId} FOR UPDATE`;
}
