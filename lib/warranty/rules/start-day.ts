import type { Day } from '@/lib/calendar/day';
import { addWorkingDays, type WorkingCalendar } from '@/lib/calendar/working';
import type { StartEvent } from './terms';

/**
 * The day cover counts from, when a unit is handed over on `handedOver`. Where the policy starts at delivery, the day
 * is not known yet at dispatch, so the latest usual day of delivery is taken, in the customer's favour: `transitDays` working days
 * later (lib/parcels/rules/carriers.ts), which are 0 where the unit is collected and with its customer that day, whatever the policy
 * says of parcels.
 *
 * startDay('delivered', Thursday 3 December 2026, …, 5) -> Thursday 10 December 2026
 */
export function startDay(
  event: StartEvent,
  handedOver: Day,
  calendar: WorkingCalendar,
  transitDays: number,
): Day {
  switch (event) {
    case 'handed-to-carrier':
    case 'collected':
      return handedOver;
    case 'delivered':
      return addWorkingDays(handedOver, transitDays, calendar);
  }
}

/**
 * The day a unit that was here on a claim is in its customer's hands again, until which days are given back and from which
 * a renewed minimum counts: the day it is collected, or the latest usual day of delivery, whatever starts first cover.
 *
 * returnDay(Thursday 11 February 2027, …, 5) -> Thursday 18 February 2027; collected, 0 -> the same day
 */
export function returnDay(handedOver: Day, calendar: WorkingCalendar, transitDays: number): Day {
  return startDay('delivered', handedOver, calendar, transitDays);
}
