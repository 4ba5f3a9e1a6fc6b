import { addDays, compareDays, type Day, daysBetween } from '@/lib/calendar/day';
import { nextWorkingDay, type WorkingCalendar } from '@/lib/calendar/working';

/** Days in a row on which the workshop is closed for one reason; both ends are closing days. */
export type Closure = { from: Day; to: Day; name: string };

/** How many days at once can be closed by one form: longer is a slip of the year. */
export const LONGEST_CLOSURE = 60;

/** From how many days before a closure customers are told of it: a parcel on its way may run into it. */
const TOLD_AHEAD_DAYS = 14;

/**
 * Closing days, earliest first, as closures: days of one reason between which nobody works belong together.
 *
 * Thursday and Friday, then Monday and Tuesday, all "Stocktaking" -> one closure from Thursday to Tuesday
 */
export function closures(days: readonly { day: Day; name: string }[], calendar: WorkingCalendar): Closure[] {
  const found: Closure[] = [];
  for (const { day, name } of days) {
    const last = found.at(-1);
    const isNext =
      last?.name === name && compareDays(nextWorkingDay(addDays(last.to, 1), calendar), day) >= 0;
    if (isNext) last.to = day;
    else found.push({ from: day, to: day, name });
  }
  return found;
}

/** What is wrong with the days of a new closure, as a sentence; null where nothing is. */
export function closureProblem({ from, to }: { from: Day; to: Day }): string | null {
  if (compareDays(to, from) < 0) return 'The last day is before the first';
  return daysBetween(from, to) >= LONGEST_CLOSURE ? `Close at most ${LONGEST_CLOSURE} days at once` : null;
}

/**
 * The closure that customers are told of on a day, with the first working day after it: one that runs, or begins within a fortnight.
 * Null where none does.
 */
export function closureToTell(
  all: readonly Closure[],
  { today, calendar }: { today: Day; calendar: WorkingCalendar },
): (Closure & { backOn: Day }) | null {
  const next = all.find(({ to }) => compareDays(to, today) >= 0);
  if (!next || compareDays(next.from, addDays(today, TOLD_AHEAD_DAYS)) > 0) return null;
  return { ...next, backOn: nextWorkingDay(addDays(next.to, 1), calendar) };
}
