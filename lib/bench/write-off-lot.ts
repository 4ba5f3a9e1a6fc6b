import { transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { writeLotEvent } from './write-lot-event';

/**
 * Takes pieces of a lot out of stock without a job: lost, broken, or a lot that is bad. Who did, and why, stays with the lot. Returns
 * what is left. `inStock` is what the form showed: sent twice, it takes them once.
 */
export async function writeOffLot(o: {
  lotId: string;
  inStock: number;
  quantity: number;
  reason: string;
  userId: string;
  now: Date;
}): Promise<number> {
  return transaction(async (tx) => {
    const { count } = await tx.lot.updateMany({
      where: { id: o.lotId, inStock: { equals: o.inStock, gte: o.quantity } },
      data: { inStock: { decrement: o.quantity } },
    });
    const lot = await tx.lot.findUnique({ where: { id: o.lotId }, select: { inStock: true } });
    if (!lot) throw new Refusal('not-found', 'This lot is no longer on the list.');
    if (count === 0) {
      const meanwhile = lot.inStock === o.inStock ? '' : ' This lot changed while you had it open.';
      throw new Refusal('conflict', `There are ${lot.inStock} left.${meanwhile}`, 'quantity');
    }
    const { quantity, reason } = o;
    await writeLotEvent(tx, { ...o, event: { kind: 'written-off', data: { quantity, reason } } });
    return lot.inStock;
  });
}
