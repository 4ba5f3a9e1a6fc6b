import { compareDays, type Day } from '@/lib/calendar/day';
import type { StartEvent } from './terms';

/**
 * The days between the day cover was counted from when a unit first left and the day it would be counted from now that it
 * leaves again, because its carrier brought the parcel back, or because it never went. No second certificate is issued: where
 * what the policy starts cover with did not happen, these days are given back. A unit that never went has neither been handed over
 * nor delivered, and for that mistake of ours it gets them whatever the policy; of one that was away only the delivery failed: it
 * gets them as the policy gives back days out of the customer's hands, and where cover starts at the handing over it runs on as it
 * was issued. Null where no day was lost. Common practice, no source.
 *
 * Counted from Thursday 10 December 2026, and from Tuesday 22 December when it leaves again: 12 days.
 */
export function detour(o: {
  startEvent: StartEvent;
  /** it really left the first time; false where that was recorded by mistake */
  wasAway: boolean;
  startsOn: Day;
  /** the day it would start, had it left today for the first time */
  again: Day;
}): { from: Day; to: Day; isByMistake: boolean } | null {
  if (o.wasAway && o.startEvent !== 'delivered') return null;
  if (compareDays(o.again, o.startsOn) <= 0) return null;
  return { from: o.startsOn, to: o.again, isByMistake: !o.wasAway };
}
