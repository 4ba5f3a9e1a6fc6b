import { compareDays, type Day } from '@/lib/calendar/day';
import { addWorkingDays, nextWorkingDay, type WorkingCalendar } from '@/lib/calendar/working';

export type PromisedWork = { promisedOn: Day | null; minutes: number };
export type BenchDay = { day: Day; minutes: number };

export type BenchLoad = {
  days: BenchDay[];
  /** minutes promised for after the last day shown */
  laterMinutes: number;
  /** minutes of units that no day was promised for yet, on none of the days */
  unpromisedMinutes: number;
  /** The first day by which more is promised than the bench has until then, and by how much. */
  short: { day: Day; minutes: number } | null;
};

/**
 * Work left on the bench by the day it is promised for, over the next working days from today on.
 *
 * What is late already counts on the first day. What has no promise counts on none: its day is found once its price is agreed, and the
 * promises given can all be kept meanwhile. A single full day is no trouble while the days
 * before it have room, so what tells trouble is the sum: by which day more is promised than the bench has until then.
 * Example: 360 minutes a day, 200 promised today and 600 tomorrow: short by 80 minutes tomorrow.
 * Refuses a bench without capacity.
 */
export function benchLoad(
  work: readonly PromisedWork[],
  o: { today: Day; days: number; capacityMinutesDay: number; calendar: WorkingCalendar },
): BenchLoad {
  if (!(o.capacityMinutesDay > 0)) throw new RangeError(`Not a capacity: ${o.capacityMinutesDay} minutes`);
  const days: BenchDay[] = [];
  let next = nextWorkingDay(o.today, o.calendar);
  while (days.length < o.days) {
    days.push({ day: next, minutes: 0 });
    next = addWorkingDays(next, 1, o.calendar);
  }
  let laterMinutes = 0;
  let unpromisedMinutes = 0;
  for (const { promisedOn, minutes } of work) {
    const slot = promisedOn && days.find(({ day }) => compareDays(promisedOn, day) <= 0);
    if (slot) slot.minutes += minutes;
    else if (promisedOn) laterMinutes += minutes;
    else unpromisedMinutes += minutes;
  }
  return { days, laterMinutes, unpromisedMinutes, short: firstShort(days, o.capacityMinutesDay) };
}

function firstShort(days: readonly BenchDay[], capacity: number): BenchLoad['short'] {
  let promised = 0;
  for (const [index, { day, minutes }] of days.entries()) {
    promised += minutes;
    const over = promised - capacity * (index + 1);
    if (over > 0) return { day, minutes: over };
  }
  return null;
}
