import { addDays, type Day, maxDay } from '@/lib/calendar/day';

/** Longest a parcel is taken to have travelled when nobody said when it was posted; common practice, no source. */
export const LONGEST_JOURNEY_DAYS = 7;

/**
 * The day a unit left the customer's hands for a claim, from which days are given back: the day they told us of the parcel.
 * Where they told us nothing the doubt is theirs: a week before it came, though not before the claim was opened. A claim
 * that was opened long before the unit was posted gives no days back for that time.
 * Example: opened on 1 February, came on 8 February, nothing told: 1 February; came on 20 July: 13 July.
 */
export function handedInOn(o: { openedOn: Day; postedOn: Day | null; arrivedOn: Day | null }): Day {
  if (o.postedOn !== null) return maxDay(o.openedOn, o.postedOn);
  if (o.arrivedOn === null) return o.openedOn;
  return maxDay(o.openedOn, addDays(o.arrivedOn, -LONGEST_JOURNEY_DAYS));
}
