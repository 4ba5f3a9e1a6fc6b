import { addDays, compareDays, type Day, maxDay } from '@/lib/calendar/day';

/** Longest a parcel is taken to have travelled when nobody said when it was posted; common practice, no source. */
export const LONGEST_JOURNEY_DAYS = 7;

/**
 * The day a unit left the customer's hands for a claim, from which days are given back: the day they told us of the parcel. A
 * reference put right later does not make it later, and only counts back to a week before it came.
 * Where they told us nothing the doubt is theirs: a week before it came, though not before the claim was opened. A claim
 * that was opened long before the unit was posted gives no days back for that time.
 * Example: opened on 1 February, came on 8 February, nothing told: 1 February; came on 20 July: 13 July.
 */
export function handedInOn(o: {
  openedOn: Day;
  /** days the parcel's reference was given on, the first one first */
  namedOn: readonly Day[];
  arrivedOn: Day | null;
}): Day {
  const weekBefore = o.arrivedOn && addDays(o.arrivedOn, -LONGEST_JOURNEY_DAYS);
  const [first] = o.namedOn;
  const last = o.namedOn.at(-1);
  if (first === undefined || last === undefined) return maxDay(o.openedOn, weekBefore ?? o.openedOn);
  const posted = weekBefore ? maxDay(first, weekBefore) : first;
  return maxDay(o.openedOn, compareDays(posted, last) > 0 ? last : posted);
}
