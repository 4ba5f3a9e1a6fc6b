/** Recalls in force: those that were not lifted as a mistake. */
export const IN_FORCE = { lifted: null } as const;

/** Of a lot, whether it is recalled: one row, or none. */
export const RECALLS = { where: IN_FORCE, select: { id: true }, take: 1 } as const;

/** What of a lot says how many of its pieces can be fitted. */
export const LOT_STOCK = { inStock: true, recalls: RECALLS } as const;

type LotStock = { inStock: number; recalls: readonly unknown[] };

/** Pieces of a part that can be fitted: what lies in a recalled lot is no stock. */
export function piecesInStock(lots: readonly LotStock[]): number {
  return lots.reduce((sum, lot) => (lot.recalls.length > 0 ? sum : sum + lot.inStock), 0);
}
