export type PartStock = {
  id: string;
  code: string;
  name: string;
  inStock: number;
  /** at this many pieces or fewer it is ordered again; null for a part that is kept in stock no more */
  reorderAt: number | null;
};
export type Pieces = { partId: string; quantity: number };

export type OrderRow<P extends PartStock = PartStock> = P & {
  /** Pieces that open jobs will usually need and have not taken yet. */
  needed: number;
  /** Pieces that were ordered and have not come yet. */
  onOrder: number;
  /** In stock once those have come and open jobs have theirs; below zero where there is not enough. */
  left: number;
  /** Fewest pieces that bring it above its mark again. */
  order: number;
};

type Done<P> = {
  repair: { usualParts: readonly P[] };
  besides: readonly { sheet: { repair: { usualParts: readonly P[] } } }[];
};

/**
 * What a job usually takes: the pieces of the repair it is under and of each that is proved beside it, by part.
 * Example: 2 screws for the repair, 3 screws and a fader for the one beside it: 5 screws and a fader.
 */
export function usualPieces<P extends Pieces>({ repair, besides }: Done<P>): P[] {
  const together = new Map<string, P>();
  for (const { usualParts } of [repair, ...besides.map(({ sheet }) => sheet.repair)]) {
    for (const part of usualParts) {
      const before = together.get(part.partId)?.quantity ?? 0;
      together.set(part.partId, { ...part, quantity: before + part.quantity });
    }
  }
  return [...together.values()];
}

/** What of an open job says which pieces it is still to take. */
export type CountedOn = {
  /** what its repairs usually take (`usualPieces`) */
  usual: readonly Pieces[];
  /** what it still waits for */
  awaited: readonly Pieces[];
  taken: readonly Pieces[];
  /** parts of which the bench said that the job does not need them */
  notNeeded: readonly string[];
};

/**
 * Pieces that a job still needs, by part: what its repairs usually take less what it has taken already, or what it still waits for,
 * whichever is more; none of a part it was said not to need.
 */
export function piecesToCome({ usual, awaited, taken, notNeeded }: CountedOn): Map<string, number> {
  const left = usual.map(({ partId, quantity }) => {
    const had = taken.filter((use) => use.partId === partId).reduce((sum, use) => sum + use.quantity, 0);
    return { partId, quantity: quantity - had };
  });
  const most = mostOf([...left, ...awaited]);
  return new Map([...most].filter(([partId, open]) => open > 0 && !notNeeded.includes(partId)));
}

/** Pieces that open jobs still need, by part. */
export function stillNeeded(jobs: readonly CountedOn[]): Map<string, number> {
  const needed = new Map<string, number>();
  for (const job of jobs) {
    for (const [partId, open] of piecesToCome(job)) needed.set(partId, (needed.get(partId) ?? 0) + open);
  }
  return needed;
}

function mostOf(pieces: readonly Pieces[]): Map<string, number> {
  const most = new Map<string, number>();
  for (const { partId, quantity } of pieces) most.set(partId, Math.max(quantity, most.get(partId) ?? 0));
  return most;
}

/**
 * Parts to order: those at their mark or below once what is on order has come and open jobs have what they usually need; the
 * scarcest first. A part without a mark is ordered only where open jobs need more than there is.
 * Example: 5 in stock, mark 3, 2 needed leaves 3, so it is on the list with 1 to order at least; once 1 is ordered it is not.
 */
export function orderList<P extends PartStock>(
  parts: readonly P[],
  needed: ReadonlyMap<string, number>,
  ordered: ReadonlyMap<string, number>,
): OrderRow<P>[] {
  return parts
    .map((part): OrderRow<P> => {
      const pieces = needed.get(part.id) ?? 0;
      const onOrder = ordered.get(part.id) ?? 0;
      const left = part.inStock + onOrder - pieces;
      return { ...part, needed: pieces, onOrder, left, order: markOfPart(part) + 1 - left };
    })
    .filter((row) => row.order > 0)
    .sort((a, b) => b.order - a.order || a.name.localeCompare(b.name, 'en'));
}

/** Whether a part is at its mark or below; never where it has none. */
export function isLow({ inStock, reorderAt }: Pick<PartStock, 'inStock' | 'reorderAt'>): boolean {
  return reorderAt !== null && inStock <= reorderAt;
}

// Without a mark nothing is wanted in stock, so the list begins one below nothing.
function markOfPart({ reorderAt }: Pick<PartStock, 'reorderAt'>): number {
  return reorderAt ?? -1;
}
