import { addDays, type Day, dayInZone, startOfDay } from '@/lib/calendar/day';
import { holidayCalendar } from '@/lib/calendar/holidays';
import { addWorkingDays, isWorkingDay, nextWorkingDay, type WorkingCalendar } from '@/lib/calendar/working';
import { closingDaysAround, DEMO_WORKSHOP } from './workshop';

const ZONE = DEMO_WORKSHOP.timeZone;

/** The days the demonstration is told in. All of its work lies before `today`; only customers are up today. */
export type DemoDays = {
  now: Date;
  today: Day;
  calendar: WorkingCalendar;
  /** The last day worked before today, and n working days before that. */
  back: (n: number) => Day;
  /** n calendar days before today. */
  ago: (n: number) => Day;
  /** The nth working day after a day; 0 is the day itself, or the next one worked. */
  workedAfter: (d: Day, n: number) => Day;
};

export function demoDays(now: Date): DemoDays {
  const today = dayInZone(now, ZONE);
  const year = Number(today.slice(0, 4));
  const calendar = holidayCalendar({
    country: DEMO_WORKSHOP.holidayCountry,
    region: DEMO_WORKSHOP.holidayRegion,
    years: [year - 2, year - 1, year, year + 1, year + 2],
    closingDays: closingDaysAround(today),
  });
  return {
    now,
    today,
    calendar,
    back: (n) => workedBefore(today, n + 1, calendar),
    ago: (n) => addDays(today, -n),
    workedAfter: (d, n) => (n === 0 ? nextWorkingDay(d, calendar) : addWorkingDays(d, n, calendar)),
  };
}

function workedBefore(d: Day, n: number, calendar: WorkingCalendar): Day {
  let reached = d;
  for (let left = n; left > 0; left -= 1) {
    reached = addDays(reached, -1);
    while (!isWorkingDay(reached, calendar)) reached = addDays(reached, -1);
  }
  return reached;
}

/** The instant a clock in the workshop shows a time of day: clock('2026-11-25', '09:40'). */
export function clock(d: Day, time: string): Date {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  return new Date(startOfDay(d, ZONE).getTime() + (hours * 60 + minutes) * 60_000);
}

export function minutesLater(instant: Date, minutes: number): Date {
  return new Date(instant.getTime() + minutes * 60_000);
}

export function dayOfInstant(instant: Date): Day {
  return dayInZone(instant, ZONE);
}
