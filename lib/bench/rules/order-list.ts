export type PartStock = { id: string; code: string; name: string; inStock: number; reorderAt: number };
export type Pieces = { partId: string; quantity: number };

export type OrderRow<P extends PartStock = PartStock> = P & {
  /** Pieces that open jobs will usually need and have not taken yet. */
  needed: number;
  /** In stock once they have them; below zero where there is not enough. */
  left: number;
  /** Fewest pieces that bring it above its mark again. */
  order: number;
};

/** Pieces that open jobs still need, by part: what their repair usually takes, less what each has taken already. */
export function stillNeeded(
  jobs: readonly { usual: readonly Pieces[]; taken: readonly Pieces[] }[],
): Map<string, number> {
  const needed = new Map<string, number>();
  for (const { usual, taken } of jobs) {
    for (const { partId, quantity } of usual) {
      const had = taken.filter((use) => use.partId === partId).reduce((sum, use) => sum + use.quantity, 0);
      const open = Math.max(0, quantity - had);
      if (open > 0) needed.set(partId, (needed.get(partId) ?? 0) + open);
    }
  }
  return needed;
}

/**
 * Parts to order: those at their mark or below once open jobs have what they usually need; the scarcest first.
 * Example: 5 in stock, mark 3, 2 needed leaves 3, so it is on the list with 1 to order at least.
 */
export function orderList<P extends PartStock>(
  parts: readonly P[],
  needed: ReadonlyMap<string, number>,
): OrderRow<P>[] {
  return parts
    .map((part): OrderRow<P> => {
      const pieces = needed.get(part.id) ?? 0;
      const left = part.inStock - pieces;
      return { ...part, needed: pieces, left, order: part.reorderAt + 1 - left };
    })
    .filter((row) => row.order > 0)
    .sort((a, b) => a.left - a.reorderAt - (b.left - b.reorderAt) || a.name.localeCompare(b.name, 'en'));
}
