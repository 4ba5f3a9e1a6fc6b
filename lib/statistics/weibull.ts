import jStat from 'jstat';
import { type Interval, USUAL_LEVEL } from './share-interval';
import type { RiskCount } from './survival';

export type WeibullFit = {
  /** Below 1 units come back early, above 1 late; only where the whole interval says so. */
  shape: number;
  shapeInterval: Interval;
  /** Days by which 63.2 % have come back. */
  scale: number;
  logLikelihood: number;
  returned: number;
};

/** A unit that came back on its first day was well for half of it, as far as anybody knows (common practice, no source). */
const FIRST_DAY = 0.5;
const SHAPES: Interval = { low: 0.01, high: 100 };

/**
 * The Weibull distribution that makes what was seen most likely, units still watched included (maximum likelihood), with the
 * interval of its shape from the profile of the likelihood. Null without two days on which units came back, since one day has
 * no spread, and where no shape from 0.01 to 100 fits. Ten returns and ten units still well at 500 hours (NIST/SEMATECH
 * e-Handbook 8.4.1.3): shape 1.7208, scale 606.5280, log-likelihood -75.135.
 */
export function fitWeibull(counts: readonly RiskCount[], level = USUAL_LEVEL): WeibullFit | null {
  const seen = counts.map(({ days, returned, left }) => ({
    log: Math.log(days === 0 ? FIRST_DAY : days),
    returned,
    watched: returned + left,
  }));
  const events = seen.filter((each) => each.returned > 0);
  if (new Set(events.map((each) => each.log)).size < 2) return null;
  const returned = events.reduce((sum, each) => sum + each.returned, 0);
  const logs = events.reduce((sum, each) => sum + each.returned * each.log, 0);

  // Powers are taken of days over the longest, so that a shape of 100 stays within numbers.
  const longest = seen.reduce((most, each) => Math.max(most, each.log), -Infinity);
  const power = (shape: number) =>
    seen.reduce((sum, each) => sum + each.watched * Math.exp(shape * (each.log - longest)), 0);
  const logScale = (shape: number) => longest + Math.log(power(shape) / returned) / shape;
  const profile = (shape: number) =>
    returned * Math.log(shape) - returned * shape * logScale(shape) + (shape - 1) * logs - returned;
  const slope = (shape: number) => {
    const weighted = seen.reduce(
      (sum, each) => sum + each.watched * each.log * Math.exp(shape * (each.log - longest)),
      0,
    );
    return 1 / shape + logs / returned - weighted / power(shape);
  };

  if (slope(SHAPES.low) < 0 || slope(SHAPES.high) > 0) return null;
  const shape = crossing(slope, SHAPES.low, SHAPES.high);
  const logLikelihood = profile(shape);
  const fallen = (each: number) => profile(each) - logLikelihood + jStat.chisquare.inv(level, 1) / 2;
  return {
    shape,
    shapeInterval: {
      low: fallen(SHAPES.low) > 0 ? SHAPES.low : crossing(fallen, shape, SHAPES.low),
      high: fallen(SHAPES.high) > 0 ? SHAPES.high : crossing(fallen, shape, SHAPES.high),
    },
    scale: Math.exp(logScale(shape)),
    logLikelihood,
    returned,
  };
}

/** Where a value that is positive at one end falls to nought on the way to the other, by halving. */
function crossing(value: (at: number) => number, positive: number, negative: number): number {
  let [above, below] = [positive, negative];
  for (let step = 0; step < 80; step += 1) {
    const middle = (above + below) / 2;
    if (value(middle) > 0) above = middle;
    else below = middle;
  }
  return (above + below) / 2;
}
