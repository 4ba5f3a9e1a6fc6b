import type { Prisma } from '@/lib/db/generated/client';
import type { Tx } from '@/lib/db/transaction';

type Asked = {
  job: { id: string; events: readonly { fromStage: string | null; at: Date }[] };
  offer: { issuedAt: Date; lines: readonly { kind: string }[] };
};

/**
 * Counts a job anew on the parts that the bench had said it does not need, once the customer agrees to a price with a part in it:
 * that was said of the work before. What was said while this price was written or asked for was said of it, and stands; so does
 * everything where the price is for work alone, since nothing in it asks for a part.
 */
export async function writeNeededAnew(tx: Tx, { job, offer }: Asked): Promise<void> {
  if (!offer.lines.some(({ kind }) => kind === 'part')) return;
  const { issuedAt } = offer;
  // After a lapse or a no the job may have gone on as it was agreed before.
  const ended = job.events.find(({ fromStage, at }) => fromStage === 'awaiting-approval' && at >= issuedAt);
  const before: Prisma.PartNotNeededWhereInput[] = [{ at: { lt: issuedAt } }];
  if (ended) before.push({ at: { gt: ended.at } });
  await tx.partNotNeeded.deleteMany({ where: { jobId: job.id, OR: before } });
}
