import { compareDays, type Day } from '@/lib/calendar/day';
import { isWorkingDay, type WorkingCalendar } from '@/lib/calendar/working';

export type NewPromiseProblem = 'no-promise' | 'same-day' | 'past' | 'closed';

/**
 * What stands against moving a promise to a day; null where nothing does. A unit is said to be ready on a day on which
 * somebody is there to have it ready.
 *
 * Promised 2026-12-09, to be moved to Saturday 2026-12-12 on 2026-12-03 -> 'closed'; to Friday 2026-12-11 -> null.
 */
export function newPromiseProblem(o: {
  promisedOn: Day | null;
  to: Day;
  today: Day;
  calendar: WorkingCalendar;
}): NewPromiseProblem | null {
  if (o.promisedOn === null) return 'no-promise';
  if (o.to === o.promisedOn) return 'same-day';
  if (compareDays(o.to, o.today) < 0) return 'past';
  return isWorkingDay(o.to, o.calendar) ? null : 'closed';
}

export const NEW_PROMISE_SENTENCES: Record<NewPromiseProblem, string> = {
  'no-promise': 'No day was promised for this job yet',
  'same-day': 'This is the day that is promised already',
  past: 'Choose today or a later day',
  closed: 'The workshop is closed on that day. Choose a working day',
};
