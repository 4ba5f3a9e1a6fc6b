import type { Day } from '@/lib/calendar/day';
import { addWorkingDays, type WorkingCalendar } from '@/lib/calendar/working';
import type { StartEvent } from './terms';

/** Working days a parcel is given to arrive; common practice, no source. Counted long, so that the post never costs cover. */
export const POST_WORKING_DAYS = 5;

/**
 * The day cover counts from, when a unit is handed over on `handedOver`. Where the policy starts at delivery, the day
 * is not known yet at dispatch, so the latest usual day of delivery is taken, in the customer's favour. A unit that is
 * collected is with its customer that day, whatever the policy says of parcels.
 *
 * startDay('delivered', Thursday 3 December 2026, …) -> Thursday 10 December 2026
 */
export function startDay(
  event: StartEvent,
  handedOver: Day,
  calendar: WorkingCalendar,
  isCollected = false,
): Day {
  if (isCollected) return handedOver;
  switch (event) {
    case 'handed-to-carrier':
    case 'collected':
      return handedOver;
    case 'delivered':
      return addWorkingDays(handedOver, POST_WORKING_DAYS, calendar);
  }
}

/**
 * The day a unit that was here on a claim is in its customer's hands again, until which days are given back and from which
 * a renewed minimum counts: the day it is collected, or the latest usual day of delivery, whatever starts first cover.
 *
 * returnDay(Thursday 11 February 2027, …) -> Thursday 18 February 2027; collected -> the same day
 */
export function returnDay(handedOver: Day, calendar: WorkingCalendar, isCollected = false): Day {
  return startDay('delivered', handedOver, calendar, isCollected);
}
