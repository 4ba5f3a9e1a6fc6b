import type { Tx } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { afterComing } from './rules/on-order';

/**
 * Counts pieces that are booked in to the order they came of, inside the caller's transaction, and ends it once all of them came.
 *
 * Two people may book parts of one order in at once, or one ends it meanwhile: the row is locked first, so the pieces of both count,
 * and whoever finds it ended is told and books nothing in.
 */
export async function writeCame(
  tx: Tx,
  o: { orderId: string; partId: string; pieces: number; userId: string; now: Date },
): Promise<void> {
  await tx.$queryRaw`SELECT 1 FROM "part_order" WHERE "id" = ${o.orderId} FOR UPDATE`;
  const order = await tx.partOrder.findFirst({
    where: { id: o.orderId, partId: o.partId, endedAt: null },
    select: { quantity: true, came: true },
  });
  if (!order)
    throw new Refusal(
      'conflict',
      'This order has come or was ended meanwhile. Nothing was booked in.',
      'order',
    );
  const { came, isDone } = afterComing(order, o.pieces);
  await tx.partOrder.update({
    where: { id: o.orderId },
    data: { came, ...(isDone && { endedAt: o.now, endedById: o.userId }) },
    select: { id: true },
  });
}
