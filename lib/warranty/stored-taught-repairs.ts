import { db } from '@/lib/db/client';
import type { Tx } from '@/lib/db/transaction';

/**
 * The repairs whose check sheets a claim can teach a check: that of its job first, then by name those which the unit was proved on
 * beside it, before it came back or since.
 */
export async function readTaughtRepairs(
  claim: { jobId: string; certificateNumber: string },
  client: Tx = db,
): Promise<{ id: string; name: string }[]> {
  const job = { OR: [{ id: claim.jobId }, { certificates: { some: { number: claim.certificateNumber } } }] };
  const { repair: own } = await client.job.findUniqueOrThrow({
    where: { id: claim.jobId },
    select: { repair: { select: { id: true, name: true } } },
  });
  const besides = await client.repair.findMany({
    where: { id: { not: own.id }, sheets: { some: { besides: { some: { job } } } } },
    orderBy: { name: 'asc' },
    select: { id: true, name: true },
  });
  return [own, ...besides];
}
