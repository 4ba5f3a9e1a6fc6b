/*
 * Words of this room, which knows counts and days and no workshop.
 * share: so many of so many, 0 to 1. interval: where the true value may well lie; `level` 0.95 leaves 2.5 % on either side.
 * bound: one end alone; `level` 0.95 leaves 5 % beyond it. watch: how long each unit was seen, and whether it came back.
 * p: how often chance alone would show as much difference, 0 to 1. adjusted p: the same with all looks on a page counted.
 */
import jStat from 'jstat';

export type Interval = { low: number; high: number };

export const USUAL_LEVEL = 0.95;

/**
 * The Wilson interval of a share, 0 to 1: where the true share may well lie, when so many of so many were counted
 * (Wilson 1927; Newcombe, Statistics in Medicine 1998;17:857). Null where nothing was counted; refuses broken counts.
 *
 * shareInterval(18, 20) -> { low: 0.699, high: 0.972 }
 */
export function shareInterval(counted: number, of: number, level = USUAL_LEVEL): Interval | null {
  requireCounts(counted, of);
  if (of === 0) return null;
  return wilsonInterval(counted / of, of, level);
}

/**
 * Wilson's interval of a share that stands on a number of units that need not be whole: a watch that was cut short is worth
 * a part of one. Refuses shares outside 0 to 1 and no units. wilsonInterval(0.9, 20) -> { low: 0.699, high: 0.972 }
 */
export function wilsonInterval(share: number, worth: number, level = USUAL_LEVEL): Interval {
  if (!(share >= 0 && share <= 1 && worth > 0)) throw new RangeError(`Not a share: ${share} of ${worth}`);
  const z = quantileFor(level);
  const square = z * z;
  const middle = (share + square / (2 * worth)) / (1 + square / worth);
  const half =
    (z * Math.sqrt((share * (1 - share)) / worth + square / (4 * worth * worth))) / (1 + square / worth);
  return {
    low: share === 0 ? 0 : Math.max(0, middle - half),
    high: share === 1 ? 1 : Math.min(1, middle + half),
  };
}

/**
 * The exact upper bound of a share, one-sided (Clopper and Pearson 1934). Counts need not be whole, since a watch that was cut short is worth a part of
 * a unit. Refuses counts below nought or more counted than there are. shareBound(0, 20, 0.95) -> 0.139 (1 - 0.05^(1/20))
 */
export function shareBound(counted: number, of: number, level: number): number {
  if (!(counted >= 0) || !(of > 0) || counted > of) throw new RangeError(`Not a share: ${counted} of ${of}`);
  return counted === of ? 1 : jStat.beta.inv(requireLevel(level), counted + 1, of - counted);
}

/** How many standard errors a two-sided interval reaches to either side: 1.95996 for 0.95. Refuses levels outside 0 to 1. */
export function quantileFor(level: number): number {
  return jStat.normal.inv(1 - (1 - requireLevel(level)) / 2, 0, 1);
}

function requireLevel(level: number): number {
  if (!(level > 0 && level < 1)) throw new RangeError(`Not a level: ${level}`);
  return level;
}

function requireCounts(counted: number, of: number): void {
  if (!Number.isInteger(counted) || !Number.isInteger(of) || counted < 0 || counted > of)
    throw new RangeError(`Not a share: ${counted} of ${of}`);
}
