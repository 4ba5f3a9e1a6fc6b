import { LOT_STOCK, piecesInStock } from '@/lib/bench/stored-stock';
import { db } from '@/lib/db/client';
import { sameButForCapitals } from '@/lib/db/like';
import { type Tx, transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { LIMITS } from './rules/list-limits';

export type UsualPart = {
  partId: string;
  code: string;
  name: string;
  /** Pieces for one repair. */
  quantity: number;
  /** Pieces that can be fitted, over all lots. */
  inStock: number;
};

/** Parts that a repair usually needs, with what is in stock of them, by code. */
export async function usualPartsOf(repairId: string, client: Tx = db): Promise<UsualPart[]> {
  const rows = await client.repairPart.findMany({
    where: { repairId },
    orderBy: { part: { code: 'asc' } },
    include: { part: { include: { lots: { select: LOT_STOCK } } } },
  });
  return rows.map(({ partId, quantity, part }) => ({
    partId,
    code: part.code,
    name: part.name,
    quantity,
    inStock: piecesInStock(part.lots),
  }));
}

/** Codes and names of all parts, to choose from. */
export async function partCodes(client: Tx = db): Promise<{ code: string; name: string }[]> {
  return client.part.findMany({ orderBy: { code: 'asc' }, select: { code: true, name: true } });
}

/**
 * Says that a repair usually needs a part, or how many pieces of it when it says so already. Capitals do not matter in the
 * code. Refuses a code nobody knows, a number of pieces that is not from 1 to 500, and a repair that is gone.
 */
export async function putUsualPart(o: { repairId: string; code: string; quantity: number }): Promise<void> {
  if (!Number.isInteger(o.quantity) || o.quantity < 1 || o.quantity > LIMITS.pieces) {
    throw new Refusal('invalid', `Give a whole number of pieces from 1 to ${LIMITS.pieces}.`, 'quantity');
  }
  await transaction(async (tx) => {
    const part = await tx.part.findFirst({
      where: { code: sameButForCapitals(o.code.trim()) },
      select: { id: true },
    });
    if (!part) throw new Refusal('invalid', 'No part has this code. Add it to the parts first.', 'code');
    if ((await tx.repair.count({ where: { id: o.repairId } })) === 0) {
      throw new Refusal('not-found', 'This repair is no longer in the catalogue.');
    }
    const key = { repairId: o.repairId, partId: part.id };
    await tx.repairPart.upsert({
      where: { repairId_partId: key },
      create: { ...key, quantity: o.quantity },
      update: { quantity: o.quantity },
    });
  });
}

/** Says that a repair does not usually need a part any more; nothing happens when it did not. */
export async function removeUsualPart(o: { repairId: string; partId: string }): Promise<void> {
  await db.repairPart.deleteMany({ where: { repairId: o.repairId, partId: o.partId } });
}
