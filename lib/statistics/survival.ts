import { type Interval, quantileFor, USUAL_LEVEL, wilsonInterval } from './share-interval';

/** Of the units seen for so many days: how many came back on that day, and how many were last seen well. */
export type RiskCount = { days: number; returned: number; left: number };

/** One step of the curve, on a day when at least one unit came back. Shares are of units still well. */
export type CurveStep = {
  days: number;
  /** Units still watched and well just before that day. */
  atRisk: number;
  returned: number;
  well: number;
  /** Greenwood's standard error of `well`. */
  error: number;
  low: number;
  high: number;
};

/**
 * The share of units still well after each day on which one came back (Kaplan and Meier 1958), with Greenwood's error and the
 * interval on the logarithm of the share, as most tables print it. Units that are still watched, or whose cover has ended,
 * count for as long as they were seen and no longer; on one day, those that came back go before those that left.
 * Where the last unit came back no interval is left: low is 0 and high 1. No step without a return.
 * Refuses counts and days below nought. Units may come in any order and in several rows of a day.
 *
 * Of 21 units 3 come back on day 6: well 18/21 = 0.857, error 0.076, from 0.720 to 1.
 */
export function survivalCurve(counts: readonly RiskCount[], level = USUAL_LEVEL): CurveStep[] {
  const z = quantileFor(level);
  const steps: CurveStep[] = [];
  let well = 1;
  let sum = 0;
  for (const { days, returned, atRisk } of riskTable(counts)) {
    if (returned === 0) continue;
    well *= 1 - returned / atRisk;
    sum += returned / (atRisk * (atRisk - returned));
    const isGone = returned === atRisk;
    const error = isGone ? 0 : well * Math.sqrt(sum);
    const reach = Math.exp(z * Math.sqrt(sum));
    steps.push({
      days,
      atRisk,
      returned,
      well: isGone ? 0 : well,
      error,
      low: isGone ? 0 : well / reach,
      high: isGone ? 1 : Math.min(1, well * reach),
    });
  }
  return steps;
}

/** How many units were watched and well just before a day: 21 at 6, 17 at 7 when three came back and one left on day 6. */
export function atRiskOn(counts: readonly RiskCount[], days: number): number {
  return counts
    .filter((count) => count.days >= days)
    .reduce((sum, { returned, left }) => sum + returned + left, 0);
}

export type ReturnedBy = {
  /** The day it was asked for, or the last day on which any unit was seen, if that is sooner. */
  days: number;
  /** Whether any unit was watched as long as was asked. */
  isReached: boolean;
  share: number;
  interval: Interval;
  /** Units watched to the end that would tell as much: what the interval stands on. */
  worth: number;
};

/**
 * The share of units that have come back by a day, with an interval. The share is one less the survival curve; the interval is
 * Wilson's on as many whole units as carry Greenwood's error (Cutler and Ederer 1958 call it the effective sample size), so
 * that it is Wilson's own where every unit was watched to the end, and still open upwards where none came back: then the
 * worth is the harmonic mean of the units watched day by day. Null where no unit was watched a single day.
 *
 * 2 of 7 units, all seen to day 90: { share: 0.286, interval: { low: 0.082, high: 0.641 }, worth: 7 }
 */
export function returnedBy(
  counts: readonly RiskCount[],
  days: number,
  level = USUAL_LEVEL,
): ReturnedBy | null {
  const last = counts.reduce((latest, count) => Math.max(latest, count.days), 0);
  const until = Math.min(days, last);
  if (!(until > 0)) return null;
  const curve = survivalCurve(counts, level).filter((step) => step.days <= until);
  const step = curve.at(-1);
  const share = step ? 1 - step.well : 0;
  const worth =
    step && step.error > 0 ? (share * (1 - share)) / step.error ** 2 : watchedUnits(counts, until);
  return {
    days: until,
    isReached: last >= days,
    share,
    interval: wilsonInterval(share, worth, level),
    worth,
  };
}

/** 1 / the mean of 1 / units watched, day by day: what Greenwood's error comes to where returns are spread evenly. */
function watchedUnits(counts: readonly RiskCount[], until: number): number {
  let sum = 0;
  let from = 0;
  for (const { days, atRisk } of riskTable(counts)) {
    const to = Math.min(days, until);
    if (to > from) sum += (to - from) / atRisk;
    from = Math.max(from, to);
  }
  return until / sum;
}

type RiskRow = { days: number; returned: number; atRisk: number };

/** One row a day, earliest first, with the units watched and well just before it. */
function riskTable(counts: readonly RiskCount[]): RiskRow[] {
  const byDay = new Map<number, { returned: number; left: number }>();
  let watched = 0;
  for (const { days, returned, left } of counts) {
    if (!(days >= 0 && Number.isInteger(returned) && Number.isInteger(left) && returned >= 0 && left >= 0))
      throw new RangeError(`Not a watch: ${days} days, ${returned} returned, ${left} left`);
    const known = byDay.get(days) ?? { returned: 0, left: 0 };
    byDay.set(days, { returned: known.returned + returned, left: known.left + left });
    watched += returned + left;
  }
  return [...byDay]
    .sort(([a], [b]) => a - b)
    .map(([days, { returned, left }]) => {
      const atRisk = watched;
      watched -= returned + left;
      return { days, returned, atRisk };
    });
}
