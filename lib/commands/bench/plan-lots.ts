import { DAY_MS } from '@/lib/calendar/spans';
import type { Chance } from './chance';
import type { KnownRepair } from './known-shop';

export type PlannedLot = {
  id: string;
  partId: string;
  code: string;
  supplier: string;
  receivedAt: number;
  unitCostMinor: number;
  used: number;
};

export type LotBook = {
  /** takes one piece of the part a repair usually needs, of a lot that was there by then */
  take: (repair: KnownRepair, at: number) => PlannedLot | null;
  isWeak: (lotId: string | null) => boolean;
  all: () => readonly PlannedLot[];
};

const QUARTER = 91 * DAY_MS;
/** One lot in so many fails more often than the others. */
const WEAK_EVERY = 11;

/** A lot of every part from each of its suppliers for every quarter. */
export function lotBook(o: {
  repairs: readonly KnownRepair[];
  chance: Chance;
  from: number;
  to: number;
}): LotBook {
  const byPart = new Map<string, PlannedLot[]>();
  const weak = new Set<string>();
  let count = 0;
  for (const part of new Map(o.repairs.flatMap(({ part }) => (part ? [[part.id, part]] : []))).values()) {
    const lots: PlannedLot[] = [];
    for (let at = o.from - QUARTER; at < o.to; at += QUARTER) {
      for (const supplier of part.suppliers) {
        count += 1;
        const id = `019d0000-0010-7000-8000-${count.toString(16).padStart(12, '0')}`;
        if (count % WEAK_EVERY === 0) weak.add(id);
        lots.push({
          id,
          partId: part.id,
          code: `Q-${String(count).padStart(4, '0')}`,
          supplier,
          receivedAt: at,
          unitCostMinor: Math.round(part.unitCostMinor * (0.9 + o.chance.below(20) / 100)),
          used: 0,
        });
      }
    }
    byPart.set(part.id, lots);
  }
  return {
    take({ part }, at) {
      const lots = part ? byPart.get(part.id) : undefined;
      if (!part || !lots) return null;
      // Of the quarter the work falls in, or of the one before, which comes first in the list.
      const newest = Math.max(0, Math.floor((at - o.from) / QUARTER)) * part.suppliers.length;
      const lot = lots[newest + o.chance.below(part.suppliers.length)];
      if (lot) lot.used += 1;
      return lot ?? null;
    },
    isWeak: (lotId) => lotId !== null && weak.has(lotId),
    all: () => [...byPart.values()].flat(),
  };
}
