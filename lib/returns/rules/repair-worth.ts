import { roundedShare } from '@/lib/money/amount';
import type { ReserveAnswer } from './reserve';

/*
 * Words of these rules.
 * leaves: what one repair brings without tax, less its own bench time and usual parts; minor units.
 * carries: whether what it leaves is enough for its warranty.
 */
export type RepairWorth = {
  netMinor: number;
  plannedMinor: number;
  leavesMinor: number;
  /** after the reserve; null while no reserve is known */
  afterReserveMinor: number | null;
  /** after the upper reserve */
  afterUpperMinor: number | null;
  carries: 'yes' | 'in-doubt' | 'no' | 'unknown';
};

/** A price without its tax, rounded half up: 12,000 with 20 % in it is 10,000. Refuses rates below nought. */
export function netPrice(priceMinor: number, rateBps: number, includesTax: boolean): number {
  if (rateBps < 0) throw new RangeError(`Not a rate: ${rateBps}`);
  return includesTax ? roundedShare(priceMinor, 10_000, 10_000 + rateBps) : priceMinor;
}

/**
 * Whether a repair's price carries its warranty: no when less than nothing is left after the expected cost of claims, in
 * doubt when only the upper cost takes it all.
 *
 * Net 6,000 and planned 4,000 leave 2,000; a reserve of 600, upper 2,500: in doubt.
 */
export function repairWorth(o: {
  netMinor: number;
  plannedMinor: number;
  reserve: ReserveAnswer;
}): RepairWorth {
  const leavesMinor = o.netMinor - o.plannedMinor;
  const base = { netMinor: o.netMinor, plannedMinor: o.plannedMinor, leavesMinor };
  if (!o.reserve.known)
    return { ...base, afterReserveMinor: null, afterUpperMinor: null, carries: 'unknown' };
  const afterReserveMinor = leavesMinor - o.reserve.reserve.reserveMinor;
  const afterUpperMinor = leavesMinor - o.reserve.reserve.upperMinor;
  const carries = afterReserveMinor < 0 ? 'no' : afterUpperMinor < 0 ? 'in-doubt' : 'yes';
  return { ...base, afterReserveMinor, afterUpperMinor, carries };
}
