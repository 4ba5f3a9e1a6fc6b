import { transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { meanCost } from './rules/mean-cost';
import { readOpenOrders } from './stored-orders';
import { writeCame } from './write-came';
import { writeLotEvent } from './write-lot-event';

/**
 * Adds pieces of a lot that came later, or were counted wrong. What one piece costs becomes the mean of those in stock and those
 * that come, by pieces; what was fitted before keeps its cost. `received` is what the form showed: sent twice, it adds once. Refuses
 * where an order of the part is open and nobody says whether they came of it: pieces found at a count did not.
 */
export async function addToLot(o: {
  lotId: string;
  received: number;
  quantity: number;
  unitCostMinor: number;
  /** the order that the pieces came of; null where they came of none */
  orderId?: string | null | undefined;
  userId: string;
  now: Date;
}): Promise<void> {
  await transaction(async (tx) => {
    const lot = await tx.lot.findUnique({
      where: { id: o.lotId },
      select: { partId: true, inStock: true, unitCostMinor: true },
    });
    if (!lot) throw new Refusal('not-found', 'This lot is no longer on the list.');
    if (o.orderId === undefined && (await readOpenOrders([lot.partId], tx)).length > 0)
      throw new Refusal('invalid', 'Say whether they came of an order', 'order');
    const { count } = await tx.lot.updateMany({
      where: { id: o.lotId, received: o.received, inStock: lot.inStock },
      data: {
        received: { increment: o.quantity },
        inStock: { increment: o.quantity },
        unitCostMinor: meanCost(lot, o),
      },
    });
    if (count === 0)
      throw new Refusal('conflict', 'This lot changed while you had it open. Nothing was added.');
    const { orderId, quantity, unitCostMinor } = o;
    if (orderId) await writeCame(tx, { ...o, orderId, partId: lot.partId, pieces: quantity });
    await writeLotEvent(tx, { ...o, event: { kind: 'added', data: { quantity, unitCostMinor } } });
  });
}
