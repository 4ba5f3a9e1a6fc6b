import { type Day, dayFromDate, dayToDate } from '@/lib/calendar/day';
import { transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { requireAfter } from './order-parts';

const GONE = 'This order has come or was ended while you had it open. Nothing was changed.';

/** Notes when what is still to come of an order should be here; null where nobody says any more. Refuses a day before it was ordered. */
export async function expectOrder(o: { orderId: string; expectedOn: Day | null }): Promise<void> {
  await transaction(async (tx) => {
    const order = await tx.partOrder.findFirst({
      where: { id: o.orderId, endedAt: null },
      select: { orderedOn: true },
    });
    if (!order) throw new Refusal('conflict', GONE);
    requireAfter(o.expectedOn, dayFromDate(order.orderedOn));
    const { count } = await tx.partOrder.updateMany({
      where: { id: o.orderId, endedAt: null },
      data: { expectedOn: o.expectedOn && dayToDate(o.expectedOn) },
    });
    if (count === 0) throw new Refusal('conflict', GONE);
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
