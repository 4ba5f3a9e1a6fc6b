import type { Tx } from '@/lib/db/transaction';
import { rewriteWatch } from './watch-sql';

/**
 * Writes anew the rows that figures of returns stand on, for these certificates, from the records as they are now. Called last by
 * whatever issues a certificate, rules on a claim or takes a ruling back, or records what a claim cost, and by writeWatchOfJob
 * where a job takes a part or gives one back. Who worked on a
 * unit, and which repair its job is under, need no call: neither changes once its certificate is issued (lib/jobs/rules/take-back.ts).
 *
 * Two changes to one certificate at once wait for each other at the row of its first revision: the second sees what the
 * first wrote and counts it too.
 */
export async function writeWatch(tx: Tx, numbers: readonly string[]): Promise<void> {
  const given = [...new Set(numbers)];
  if (given.length === 0) return;
  await tx.$queryRaw`
    SELECT 1 FROM "certificate" WHERE "number" = ANY(${given}) AND "revision" = 1 ORDER BY "number" FOR NO KEY UPDATE`;
  for (const statement of rewriteWatch('given')) await tx.$executeRawUnsafe(statement, given);
}

/** The same where the parts fitted on a job changed, which may be a claim's: nothing for any other job. */
export async function writeWatchOfJob(tx: Tx, jobId: string): Promise<void> {
  const claim = await tx.claim.findUnique({
    where: { jobId },
    select: { certificateNumber: true, cause: true },
  });
  if (claim?.cause === 'fitted-part') await writeWatch(tx, [claim.certificateNumber]);
}
