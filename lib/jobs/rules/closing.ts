import { addDays, compareDays, type Day, maxDay } from '@/lib/calendar/day';
import { addWorkingDays, type WorkingCalendar } from '@/lib/calendar/working';

/** Days after which a unit that was sent back counts as delivered at the earliest; common practice, no source. */
export const LEAST_DAYS = 14;

/**
 * The first day on which a unit that was sent back on `sentOn` counts as delivered: never while its parcel, which usually travels at
 * most `transitDays` working days, may still be on its way, the last of these days included. They are counted in the workshop's
 * calendar, as the cover that starts with delivery is (lib/warranty/rules/start-day.ts).
 *
 * Sent on Friday 18 December 2026 with at most 20 of England's -> Thursday 21 January 2027; with at most 5 -> Friday 1 January 2027
 */
export function closesOn(
  { sentOn, transitDays }: { sentOn: Day; transitDays: number },
  calendar: WorkingCalendar,
): Day {
  const lastOnTheWay = addWorkingDays(sentOn, transitDays, calendar);
  return maxDay(addDays(sentOn, LEAST_DAYS), addDays(lastOnTheWay, 1));
}

/** Whether that day has come. */
export function isDelivered(
  sent: { sentOn: Day; transitDays: number },
  { today, calendar }: { today: Day; calendar: WorkingCalendar },
): boolean {
  return compareDays(today, closesOn(sent, calendar)) >= 0;
}
