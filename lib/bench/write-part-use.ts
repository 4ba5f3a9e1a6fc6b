import type { Tx } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { RECALLS } from './stored-stock';

export type PartTaken = {
  partUseId: string;
  part: string;
  lot: string;
  quantity: number;
  unitCostMinor: number;
};

/**
 * Takes pieces of a lot for a job and returns what was taken, at the lot's cost.
 *
 * Two people may take the last piece at once: the update itself asks for enough stock, so the one whose update finds no row is
 * told that the lot is empty, and stock never falls below nothing (the database has the same rule).
 */
export async function writePartUse(
  tx: Tx,
  o: { jobId: string; lotId: string; quantity: number; userId: string; now: Date },
): Promise<PartTaken> {
  if (!Number.isInteger(o.quantity) || o.quantity < 1) {
    throw new Refusal('invalid', 'Give a whole number of pieces, at least one.', 'quantity');
  }
  const { count } = await tx.lot.updateMany({
    where: { id: o.lotId, inStock: { gte: o.quantity } },
    data: { inStock: { decrement: o.quantity } },
  });
  const lot = await tx.lot.findUnique({
    where: { id: o.lotId },
    select: {
      code: true,
      inStock: true,
      unitCostMinor: true,
      part: { select: { name: true } },
      recalls: RECALLS,
    },
  });
  if (!lot) throw new Refusal('not-found', 'This lot is not in stock.', 'lotId');
  if (lot.recalls.length > 0) {
    throw new Refusal('conflict', `Lot ${lot.code} was recalled: take another.`, 'lotId');
  }
  if (count === 0) {
    throw new Refusal('conflict', `Lot ${lot.code} has ${lot.inStock} left, not ${o.quantity}.`, 'quantity');
  }
  const use = await tx.partUse.create({
    data: {
      jobId: o.jobId,
      lotId: o.lotId,
      quantity: o.quantity,
      unitCostMinor: lot.unitCostMinor,
      at: o.now,
      userId: o.userId,
    },
    select: { id: true },
  });
  const { unitCostMinor } = lot;
  return { partUseId: use.id, part: lot.part.name, lot: lot.code, quantity: o.quantity, unitCostMinor };
}
