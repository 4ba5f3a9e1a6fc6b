import { addDays, compareDays, type Day, daysBetween, maxDay } from '@/lib/calendar/day';
import type { HeldInterval, HeldRule } from './terms';

/** A stretch of days without a gap: the day of `from` is not held, every later day up to and including `to` is. */
export type HeldBlock = { from: Day; to: Day; days: number };

/** Under 'from-seven-days' a shorter stretch gives nothing back (FR C. conso. L217-16 as it stood until 2021). */
export const SHORTEST_LONG_STAY_DAYS = 7;

/**
 * Joins intervals that overlap or follow on without a day in between, so that no day is ever counted twice.
 * Days before `since` are left out. Refuses an interval that ends before it begins.
 * Example: 1-10 July and 8-12 July give one block of 11 days.
 */
export function heldBlocks(intervals: readonly HeldInterval[], since: Day | null = null): HeldBlock[] {
  const ordered = intervals
    .map((interval) => clipped(interval, since))
    .filter((stretch) => compareDays(stretch.to, stretch.from) > 0)
    .sort((a, b) => compareDays(a.from, b.from));
  const blocks: HeldBlock[] = [];
  for (const { from, to } of ordered) {
    const last = blocks.at(-1);
    if (last && compareDays(from, last.to) <= 0) {
      last.to = maxDay(last.to, to);
      last.days = daysBetween(last.from, last.to);
    } else {
      blocks.push({ from, to, days: daysBetween(from, to) });
    }
  }
  return blocks;
}

function clipped(interval: HeldInterval, since: Day | null): { from: Day; to: Day } {
  if (compareDays(interval.to, interval.from) < 0)
    throw new RangeError(
      `Claim ${interval.claimNumber} was handed back on ${interval.to}, before it was handed in on ${interval.from}`,
    );
  return { from: since === null ? interval.from : maxDay(interval.from, since), to: interval.to };
}

/** The days of one block that a rule gives back; the two-months rule gives no days, it sets a floor (renew.ts). */
export function givenBackFor(block: HeldBlock, rule: HeldRule): number {
  switch (rule) {
    case 'none':
    case 'two-months-from-return':
      return 0;
    case 'whole-days':
      return block.days;
    case 'from-seven-days':
      return block.days >= SHORTEST_LONG_STAY_DAYS ? block.days : 0;
  }
}

/**
 * Whole days that a rule gives back for a set of intervals, the hand-in day not counted, the hand-back day counted,
 * overlapping days counted once.
 * Example: handed in on 1 July and back on 21 July is 20 days under 'whole-days', and 0 under 'none'.
 */
export function heldDays(intervals: readonly HeldInterval[], rule: HeldRule): number {
  return heldBlocks(intervals).reduce((sum, block) => sum + givenBackFor(block, rule), 0);
}

/**
 * Moves an end of cover by the days given back, stretch by stretch in the order of the calendar. A stretch that began
 * after cover had ended gives nothing back: nothing was running that could be paused.
 * Example: end 15 January 2027, held 1 to 21 July 2026, gives 4 February 2027.
 */
export function pausedEnd(end: Day, blocks: readonly HeldBlock[], rule: HeldRule): Day {
  return blocks.reduce(
    (moved, block) =>
      compareDays(block.from, moved) <= 0 ? addDays(moved, givenBackFor(block, rule)) : moved,
    end,
  );
}
