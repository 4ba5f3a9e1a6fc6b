import { roundedShare } from '@/lib/money/amount';
import { LEAST_RETURNS } from './evidence';
import type { ReserveAnswer } from './reserve';

/*
 * Words of these rules.
 * leaves: what one repair brings without tax, less its own bench time and usual parts; minor units.
 * carries: whether what it leaves is enough for its warranty; below-cost when nothing is left even without one, too-few when
 * too little was watched to say.
 */
export type RepairWorth = {
  netMinor: number;
  plannedMinor: number;
  leavesMinor: number;
  /** after the reserve; null while no reserve is known */
  afterReserveMinor: number | null;
  /** after the upper reserve */
  afterUpperMinor: number | null;
  carries: 'yes' | 'in-doubt' | 'no' | 'below-cost' | 'too-few' | 'unknown';
};

/** Watched units below which nothing is said of a repair that came back fewer than three times (common practice, no source). */
export const ENOUGH_WATCHED = 12;

/** A price without its tax, rounded half up: 12,000 with 20 % in it is 10,000. Refuses rates below nought. */
export function netPrice(priceMinor: number, rateBps: number, includesTax: boolean): number {
  if (rateBps < 0) throw new RangeError(`Not a rate: ${rateBps}`);
  return includesTax ? roundedShare(priceMinor, 10_000, 10_000 + rateBps) : priceMinor;
}

/**
 * Whether a repair's price carries its warranty: no when less than nothing is left after the expected cost of claims, in
 * doubt when only the upper cost takes it all. Units count as the survival curve's error is worth.
 *
 * Net 6,000 and planned 4,000 leave 2,000; a reserve of 600, upper 2,500, from 40 units: in doubt; from 5: too few to say.
 */
export function repairWorth(o: {
  netMinor: number;
  plannedMinor: number;
  reserve: ReserveAnswer;
  returned: number;
}): RepairWorth {
  const leavesMinor = o.netMinor - o.plannedMinor;
  const base = { netMinor: o.netMinor, plannedMinor: o.plannedMinor, leavesMinor };
  if (!o.reserve.known)
    return { ...base, afterReserveMinor: null, afterUpperMinor: null, carries: 'unknown' };
  const afterReserveMinor = leavesMinor - o.reserve.reserve.reserveMinor;
  const afterUpperMinor = leavesMinor - o.reserve.reserve.upperMinor;
  const carries = isEnough(o.returned, o.reserve.reserve.chance.worth)
    ? verdict(leavesMinor, afterReserveMinor, afterUpperMinor)
    : 'too-few';
  return { ...base, afterReserveMinor, afterUpperMinor, carries };
}

function isEnough(returned: number, worth: number): boolean {
  return returned >= LEAST_RETURNS || worth >= ENOUGH_WATCHED;
}

function verdict(leaves: number, afterReserve: number, afterUpper: number): RepairWorth['carries'] {
  if (leaves < 0) return 'below-cost';
  if (afterReserve < 0) return 'no';
  return afterUpper < 0 ? 'in-doubt' : 'yes';
}
