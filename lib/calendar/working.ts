import { addDays, compareDays, type Day, daysBetween, isDay, isoWeekday } from './day';

export type WorkingCalendar = {
  /** ISO weekdays that are never worked, Monday 1 to Sunday 7. */
  weekend: readonly number[];
  /** Holidays and closing days by their name. */
  closed: ReadonlyMap<string, string>;
};

// No workshop closes for longer; past this the calendar itself is wrong.
const LONGEST_CLOSURE_DAYS = 800;

/** True when the day is neither a weekend day nor closed. */
export function isWorkingDay(d: Day, c: WorkingCalendar): boolean {
  return !c.closed.has(d) && !c.weekend.includes(isoWeekday(d));
}

/**
 * The day itself when it is worked, else the first later one that is (Regulation 1182/71 Art. 3(4)):
 * with Boxing Day's substitute on Monday 2026-12-28, Saturday 2026-12-26 becomes Tuesday 2026-12-29.
 * Refuses a calendar without a working day in sight.
 */
export function nextWorkingDay(d: Day, c: WorkingCalendar): Day {
  let candidate = d;
  for (let tried = 0; tried < LONGEST_CLOSURE_DAYS; tried += 1) {
    if (isWorkingDay(candidate, c)) return candidate;
    candidate = addDays(candidate, 1);
  }
  throw new RangeError(`No working day within ${LONGEST_CLOSURE_DAYS} days of ${d}`);
}

/**
 * The nth working day after a day; the first one after it counts as 1, and 0 is the day itself.
 * Three working days from Friday 2026-12-04 end on Wednesday 2026-12-09. Refuses negative and broken counts.
 */
export function addWorkingDays(d: Day, n: number, c: WorkingCalendar): Day {
  if (!Number.isInteger(n) || n < 0) throw new RangeError(`Not a count of working days: ${n}`);
  let reached = d;
  for (let left = n; left > 0; left -= 1) reached = nextWorkingDay(addDays(reached, 1), c);
  return reached;
}

/**
 * Working days after `from` up to and including `to`, so that it undoes addWorkingDays;
 * negative when `to` lies before `from`. Friday 2026-12-04 to Wednesday 2026-12-09 is 3.
 */
export function workingDaysBetween(from: Day, to: Day, c: WorkingCalendar): number {
  if (compareDays(to, from) < 0) return -workingDaysBetween(to, from, c) || 0;
  const weekend = new Set(c.weekend);
  const length = daysBetween(from, to);
  // Whole weeks at once, then the days left over: promises over years of jobs count thousands of such spans.
  let count = Math.floor(length / 7) * (7 - weekend.size);
  const firstWeekday = isoWeekday(from);
  for (let i = 1; i <= length % 7; i += 1) {
    if (!weekend.has(((firstWeekday - 1 + i) % 7) + 1)) count += 1;
  }
  for (const closed of c.closed.keys()) {
    if (closed <= from || closed > to || !isDay(closed)) continue;
    if (!weekend.has(isoWeekday(closed))) count -= 1;
  }
  return count;
}

/** '5 working days', '1 working day'. */
export function workingDaysWords(days: number): string {
  return days === 1 ? '1 working day' : `${days} working days`;
}
