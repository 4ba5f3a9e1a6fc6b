import { type Day, dayFromDate, dayToDate } from '@/lib/calendar/day';
import { transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { requireAfter } from './order-parts';

const GONE = 'This order has come or was ended while you had it open. Nothing was changed.';

/**
 * Notes when what is still to come of an order should be here; null where nobody says any more. Who moved it, and from which day, is
 * kept. Refuses a day before it was ordered.
 *
 * Two people may move it at once: the row is locked first, so that each move begins where the one before ended.
 */
export async function expectOrder(o: {
  orderId: string;
  expectedOn: Day | null;
  userId: string;
  now: Date;
}): Promise<void> {
  const { orderId, expectedOn } = o;
  await transaction(async (tx) => {
    await tx.$queryRaw`SELECT 1 FROM "part_order" WHERE "id" = ${orderId} FOR UPDATE`;
    const order = await tx.partOrder.findFirst({
      where: { id: orderId, endedAt: null },
      select: { orderedOn: true, expectedOn: true },
    });
    if (!order) throw new Refusal('conflict', GONE);
    requireAfter(expectedOn, dayFromDate(order.orderedOn));
    if ((order.expectedOn && dayFromDate(order.expectedOn)) === expectedOn) return;
    const toDay = expectedOn && dayToDate(expectedOn);
    await tx.partOrder.update({
      where: { id: orderId },
      data: { expectedOn: toDay },
      select: { id: true },
    });
    await tx.partOrderMove.create({
      data: { orderId, fromDay: order.expectedOn, toDay, at: o.now, userId: o.userId },
      select: { id: true },
    });
  });
}

/**
 * Ends an order of which nothing more comes: cancelled, sold out, or never placed. The order list asks for the pieces again. `came` is
 * what the form showed: pieces that were booked in meanwhile are looked at first.
 */
export async function endOrder(o: {
  orderId: string;
  came: number;
  userId: string;
  now: Date;
}): Promise<void> {
  await transaction(async (tx) => {
    const { count } = await tx.partOrder.updateMany({
      where: { id: o.orderId, endedAt: null, came: o.came },
      data: { endedAt: o.now, endedById: o.userId },
    });
    if (count === 0) throw new Refusal('conflict', GONE);
  });
}
