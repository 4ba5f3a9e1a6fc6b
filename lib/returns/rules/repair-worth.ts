import { roundedShare } from '@/lib/money/amount';
import type { RiskCount } from '@/lib/statistics/survival';
import { LEAST_RETURNS } from './evidence';
import type { ReserveAnswer } from './reserve';

/*
 * Words of these rules.
 * leaves: what one repair brings without tax, less its own bench time and usual parts; minor units.
 * carries: whether what it leaves is enough for its warranty; below-cost when nothing is left even without one, too-few when
 * too little was watched to say.
 * long: enough of the term was watched that the rest of it can hardly change the answer.
 */
export type RepairWorth = {
  netMinor: number;
  plannedMinor: number;
  leavesMinor: number;
  /** after the reserve; null while no reserve is known */
  afterReserveMinor: number | null;
  /** after the upper reserve */
  afterUpperMinor: number | null;
  isLong: boolean;
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
 * doubt when only the upper cost takes it all. Units count as the survival curve's error is worth. A curve ends with its watch,
 * and what comes back later only adds to the cost: so a no stands however short the watch was, and anything better is told only
 * of a long one.
 *
 * Net 6,000 and planned 4,000 leave 2,000; a reserve of 600, upper 2,500, from 40 units watched to the end: in doubt; from 5,
 * or from 40 watched for a week of a year: too few to say.
 */
export function repairWorth(o: {
  netMinor: number;
  plannedMinor: number;
  reserve: ReserveAnswer;
  returned: number;
  watch: readonly RiskCount[];
  /** null where its policy gives no term, and so no reserve is known */
  termDays: number | null;
}): RepairWorth {
  const leavesMinor = o.netMinor - o.plannedMinor;
  const isLong = o.termDays !== null && isWatchedLong(o.watch, o.termDays);
  const base = { netMinor: o.netMinor, plannedMinor: o.plannedMinor, leavesMinor, isLong };
  if (!o.reserve.known)
    return { ...base, afterReserveMinor: null, afterUpperMinor: null, carries: 'unknown' };
  const afterReserveMinor = leavesMinor - o.reserve.reserve.reserveMinor;
  const afterUpperMinor = leavesMinor - o.reserve.reserve.upperMinor;
  const carries = isEnough(o.returned, o.reserve.reserve.chance.worth)
    ? verdict(leavesMinor, afterReserveMinor, afterUpperMinor)
    : 'too-few';
  const isTold = isLong || (carries !== 'yes' && carries !== 'in-doubt');
  return { ...base, afterReserveMinor, afterUpperMinor, carries: isTold ? carries : 'too-few' };
}

function isEnough(returned: number, worth: number): boolean {
  return returned >= LEAST_RETURNS || worth >= ENOUGH_WATCHED;
}

/**
 * Whether twelve units were watched for two thirds of the term, or where there are fewer two of three of all, those that came
 * back before then among them, and at least one (two thirds, as in equal-watch.ts: common practice, no source). One old unit
 * beside many of last week says nothing of the rest of the term.
 */
function isWatchedLong(watch: readonly RiskCount[], termDays: number): boolean {
  let units = 0;
  let long = 0;
  let backSooner = 0;
  for (const { days, returned, left } of watch) {
    units += returned + left;
    if (days * 3 >= termDays * 2) long += returned + left;
    else backSooner += returned;
  }
  return long >= ENOUGH_WATCHED || (long > 0 && (long + backSooner) * 3 >= units * 2);
}

function verdict(leaves: number, afterReserve: number, afterUpper: number): RepairWorth['carries'] {
  if (leaves < 0) return 'below-cost';
  if (afterReserve < 0) return 'no';
  return afterUpper < 0 ? 'in-doubt' : 'yes';
}
