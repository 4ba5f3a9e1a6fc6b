import { compareDays, type Day, maxDay } from '@/lib/calendar/day';
import type { WorkingCalendar } from '@/lib/calendar/working';
import { type CoverCount, countCover } from './cover';
import { relevantLines } from './standing';
import type { CoverLine, HeldInterval, PolicyTerms } from './terms';

/** What is left of a certificate for a fault that was claimed once, and whose claim ended before the unit was here. */
export type ClaimAgain = {
  /** last day covered */
  endsOn: Day;
  /** last day on which a new claim is in time, or null when that day is past */
  until: Day | null;
  /** last day on which a person may still let a late one in; null while it is in time, and after that day */
  lateUntil: Day | null;
};

/**
 * Whether a fault can be claimed again today, and until when. A new claim counts from its own day, so whoever gives up an open one
 * may lose what it was opened for.
 *
 * Example: a line until 3 December 2027, asked on 8 December with 7 days of grace, gives { endsOn: 3 December, until: null,
 * lateUntil: 10 December }.
 */
export function claimAgain(
  o: { lines: readonly CoverLine[]; symptom: string; today: Day },
  cover: { held: readonly HeldInterval[]; terms: PolicyTerms; calendar: WorkingCalendar },
): ClaimAgain {
  const named = relevantLines(o.lines, o.symptom);
  const counts = (named.length > 0 ? named : o.lines).map((line) =>
    countCover(line, cover.held, cover.terms, cover.calendar),
  );
  const [first, ...rest] = counts;
  if (!first) throw new RangeError('a certificate without a line covers nothing');
  const last = (pick: (count: CoverCount) => Day) => maxDay(pick(first), ...rest.map(pick));
  const open = (day: Day) => (compareDays(o.today, day) <= 0 ? day : null);
  const until = open(last(({ lastClaimDay }) => lastClaimDay));
  return {
    endsOn: last(({ end }) => end),
    until,
    lateUntil: until === null ? open(last(({ lastGraceDay }) => lastGraceDay)) : null,
  };
}
