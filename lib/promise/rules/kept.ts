import type { Day } from '@/lib/calendar/day';
import { ENOUGH_JOBS } from './promise';

/** Promises whose day fell in a month, `2026-11`: how many, how many of them kept, and whose unit is not ready yet. */
export type KeptMonth = { month: string; promises: number; kept: number; notReady: number };

/**
 * One promise by the day it counts for; null while that day has not passed.
 *
 * judgedPromise(2026-11-16, 2026-11-16, 2026-11-25) -> { month: '2026-11', promises: 1, kept: 1, notReady: 0 }
 */
export function judgedPromise(on: Day, readyOn: Day | null, today: Day): KeptMonth | null {
  if (on >= today) return null;
  const isKept = readyOn !== null && readyOn <= on;
  return { month: on.slice(0, 7), promises: 1, kept: isKept ? 1 : 0, notReady: readyOn === null ? 1 : 0 };
}

/** Counts of the same month in one, the earliest month first. */
export function byMonth(counts: readonly KeptMonth[]): KeptMonth[] {
  const months = new Map<string, KeptMonth>();
  for (const count of counts) {
    const sum = months.get(count.month) ?? { month: count.month, promises: 0, kept: 0, notReady: 0 };
    months.set(count.month, {
      month: count.month,
      promises: sum.promises + count.promises,
      kept: sum.kept + count.kept,
      notReady: sum.notReady + count.notReady,
    });
  }
  return [...months.values()].sort((a, b) => (a.month < b.month ? -1 : 1));
}

/** Promises whose day has passed, and how many of them were kept. */
export type KeptTally = { promises: number; kept: number };

/** All months in one; null below twelve promises, of which a share would say little. */
export function keptTally(months: readonly KeptMonth[]): KeptTally | null {
  const sum = months.reduce(
    (all, { promises, kept }) => ({ promises: all.promises + promises, kept: all.kept + kept }),
    { promises: 0, kept: 0 },
  );
  return sum.promises < ENOUGH_JOBS ? null : sum;
}
