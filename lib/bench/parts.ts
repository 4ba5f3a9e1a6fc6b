import { type Day, dayToDate } from '@/lib/calendar/day';
import { TERM_SENTENCE } from '@/lib/catalogue/rules/term-parts';
import { isUniqueViolation } from '@/lib/db/errors';
import { type Tx, transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { requireAsShown, type Shown } from '@/lib/shown-row';
import { isTerm } from '@/lib/warranty/rules/terms';
import { PART_FIELDS } from './part-records';
import { writeLotEvent } from './write-lot-event';

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
export async function usePart(
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
      recalls: { select: { id: true }, take: 1 },
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

export type PartInput = {
  code: string;
  name: string;
  /** The supplier's own warranty, ISO 8601, or null. */
  term: string | null;
  /** null: ordered no more */
  reorderAt: number | null;
};

/**
 * Adds a part, or changes the one that was shown. Returns its id. Refuses a form older than the part, a code in use and a term
 * that is no period or longer than 100 years.
 */
export async function savePart(shown: Shown | null, input: PartInput): Promise<string> {
  if (input.term !== null && !isTerm(input.term)) {
    throw new Refusal('invalid', TERM_SENTENCE, 'term');
  }
  try {
    return await transaction(async (tx) => {
      if (shown === null) return (await tx.part.create({ data: input, select: { id: true } })).id;
      const { id } = shown;
      // Locked before it is compared: of two who have the part open the second finds what the first left.
      await tx.$queryRaw`SELECT 1 FROM "part" WHERE "id" = ${id} FOR UPDATE`;
      const before = await tx.part.findUnique({ where: { id }, select: PART_FIELDS });
      requireAsShown(shown, PART_FIELDS, before, 'part');
      await tx.part.update({ where: { id }, data: input });
      return id;
    });
  } catch (error) {
    if (isUniqueViolation(error, 'part_code_key')) {
      throw new Refusal('conflict', 'Another part has this code.', 'code');
    }
    throw error;
  }
}

export type LotInput = {
  partId: string;
  code: string;
  supplier: string;
  receivedOn: Day;
  received: number;
  unitCostMinor: number;
};

/** Books a delivery in as a new lot, all of it in stock. Returns its id. Refuses a lot code the part has already. */
export async function addLot(input: LotInput): Promise<string> {
  const data = { ...input, receivedOn: dayToDate(input.receivedOn), inStock: input.received };
  try {
    return await transaction(async (tx) => {
      if ((await tx.part.count({ where: { id: input.partId } })) === 0) {
        throw new Refusal('not-found', 'This part is no longer on the list.');
      }
      return (await tx.lot.create({ data, select: { id: true } })).id;
    });
  } catch (error) {
    if (isUniqueViolation(error, 'lot_partId_code_key')) {
      throw new Refusal(
        'conflict',
        'This part has a lot of that code already. Add the pieces on its page.',
        'code',
      );
    }
    throw error;
  }
}

/**
 * Adds pieces of a lot that came later, or were counted wrong. What one piece costs becomes the mean of those in stock and those
 * that come, by pieces; what was fitted before keeps its cost. `received` is what the form showed: sent twice, it adds once.
 */
export async function addToLot(o: {
  lotId: string;
  received: number;
  quantity: number;
  unitCostMinor: number;
  userId: string;
  now: Date;
}): Promise<void> {
  await transaction(async (tx) => {
    const lot = await tx.lot.findUnique({
      where: { id: o.lotId },
      select: { inStock: true, unitCostMinor: true },
    });
    if (!lot) throw new Refusal('not-found', 'This lot is no longer on the list.');
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
    const { quantity, unitCostMinor } = o;
    await writeLotEvent(tx, { ...o, event: { kind: 'added', data: { quantity, unitCostMinor } } });
  });
}

/** Minor units, to the nearest: 4 in stock at 210 and 8 more at 240 give 230. */
function meanCost(
  lot: { inStock: number; unitCostMinor: number },
  more: { quantity: number; unitCostMinor: number },
): number {
  const minor = lot.inStock * lot.unitCostMinor + more.quantity * more.unitCostMinor;
  return Math.round(minor / (lot.inStock + more.quantity));
}

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
