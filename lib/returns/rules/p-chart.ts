import jStat from 'jstat';
import { type Interval, shareInterval } from '@/lib/statistics/share-interval';

export type MonthCount = { month: string; units: number; returned: number };

export type ChartPoint = MonthCount & {
  /** null in a month without units */
  share: number | null;
  interval: Interval | null;
  /** limits of this month's size; never below 0 or above 1 */
  low: number | null;
  high: number | null;
  out: 'above' | 'below' | null;
  /** too few units for the limits to be trusted: judged by exact chance instead */
  isSmall: boolean;
};

export type PChart = { centre: number; returned: number; units: number; points: ChartPoint[] };

/** Fewer returns than this expected in a month, or fewer that stay well, and its limits are only drawn (common practice, no source). */
const TRUSTED = 5;
/** Beyond three standard errors on one side of the normal distribution (handbook tables). */
const BEYOND = 0.00135;

/**
 * A chart of shares by month with limits three standard errors from the share of all months together
 * (NIST/SEMATECH e-Handbook 6.3.3.2); limits follow the size of each month and end at 0 and 1. A month in which fewer than five
 * returns, or five that stay well, were to be expected is called out only where chance would go as far in fewer than 0.135 % of months, by the
 * exact binomial. Null where no unit was counted in any month; refuses broken counts.
 *
 * Thirty samples of 50 with 347 found: centre 0.2313, limits 0.0524 and 0.4102; 22 of 50 is above.
 */
export function pChart(months: readonly MonthCount[]): PChart | null {
  const units = months.reduce((sum, month) => sum + month.units, 0);
  const returned = months.reduce((sum, month) => sum + month.returned, 0);
  if (units === 0) return null;
  const centre = returned / units;
  return { centre, returned, units, points: months.map((month) => pointOf(month, centre)) };
}

function pointOf(month: MonthCount, centre: number): ChartPoint {
  const { units, returned } = month;
  const interval = shareInterval(returned, units);
  const isSmall = units * Math.min(centre, 1 - centre) < TRUSTED;
  if (units === 0) return { ...month, share: null, interval, low: null, high: null, out: null, isSmall };
  const share = returned / units;
  const reach = 3 * Math.sqrt((centre * (1 - centre)) / units);
  const low = Math.max(0, centre - reach);
  const high = Math.min(1, centre + reach);
  const isAbove = isSmall ? chanceOfAtLeast(returned, units, centre) < BEYOND : share > high;
  const isBelow = isSmall ? jStat.binomial.cdf(returned, units, centre) < BEYOND : share < low;
  return { ...month, share, interval, low, high, out: isAbove ? 'above' : isBelow ? 'below' : null, isSmall };
}

function chanceOfAtLeast(count: number, of: number, share: number): number {
  return count === 0 ? 1 : 1 - jStat.binomial.cdf(count - 1, of, share);
}
