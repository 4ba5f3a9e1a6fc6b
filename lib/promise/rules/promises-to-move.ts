import { addDays, compareDays, type Day, maxDay } from '@/lib/calendar/day';
import { addWorkingDays, isWorkingDay, nextWorkingDay, type WorkingCalendar } from '@/lib/calendar/working';

/** A unit that waits on us, with the bench minutes it still needs. */
export type OpenPromise = {
  promisedOn: Day;
  arrivedOn: Day;
  minutesLeft: number;
  /** when the last part it waits for should come; null where it waits for none, or nobody knows */
  partOn: Day | null;
};

/** The day has gone by; nobody is here on it; its part comes after it; or more is promised until then than the bench has. */
export type WhyMove = 'late' | 'closed' | 'part-later' | 'no-room';

export type PromiseToMove<P extends OpenPromise> = { promise: P; why: WhyMove; to: Day };

/**
 * The promises that will not be kept as they stand, oldest first, each with the first working day that has room for it.
 *
 * The bench takes what was promised first first, as Today counts it (lib/jobs/rules/bench-load.ts): once every promise given here is
 * moved to its day, Today lacks no hours. What is late already is said for tomorrow at the earliest, since today may be half gone.
 * A unit that waits for a part is said for the working day after the part should come. Whether it does nobody here knows: the day is
 * a proposal.
 *
 * Two units of 300 minutes promised for Thursday 24 December 2026, closed from then to Monday 4 January, 360 minutes a day, looked at
 * on Wednesday 23 December -> the first, 'closed', to Tuesday 5 January; the second there too, since 600 minutes are done by then.
 * Refuses a bench without capacity.
 */
export function promisesToMove<P extends OpenPromise>(
  open: readonly P[],
  o: { today: Day; capacityMinutesDay: number; calendar: WorkingCalendar },
): PromiseToMove<P>[] {
  const { today, capacityMinutesDay, calendar } = o;
  if (!(capacityMinutesDay > 0)) throw new RangeError(`Not a capacity: ${capacityMinutesDay} minutes`);
  const first = nextWorkingDay(today, calendar);
  const queue = [...open].sort(
    (a, b) => compareDays(a.promisedOn, b.promisedOn) || compareDays(a.arrivedOn, b.arrivedOn),
  );
  const found: PromiseToMove<P>[] = [];
  let minutes = 0;
  for (const promise of queue) {
    minutes += promise.minutesLeft;
    const fullDays = Math.max(0, Math.ceil(minutes / capacityMinutesDay) - 1);
    const roomOn = addWorkingDays(first, fullDays, calendar);
    const why = whyMove(promise, { today, calendar, roomOn });
    if (!why) continue;
    const earliest = nextWorkingDay(why === 'late' ? addDays(today, 1) : promise.promisedOn, calendar);
    const { partOn } = promise;
    const afterPart = partOn && compareDays(partOn, today) >= 0 ? addWorkingDays(partOn, 1, calendar) : first;
    found.push({ promise, why, to: maxDay(roomOn, earliest, afterPart) });
  }
  return found;
}

function whyMove(
  { promisedOn, partOn }: OpenPromise,
  { today, calendar, roomOn }: { today: Day; calendar: WorkingCalendar; roomOn: Day },
): WhyMove | null {
  if (compareDays(promisedOn, today) < 0) return 'late';
  if (!isWorkingDay(promisedOn, calendar)) return 'closed';
  if (partOn && compareDays(partOn, promisedOn) > 0) return 'part-later';
  return compareDays(roomOn, promisedOn) > 0 ? 'no-room' : null;
}
