import { addDays, compareDays, type Day, daysBetween, maxDay } from '@/lib/calendar/day';
import { addPeriod } from '@/lib/calendar/period';
import { nextWorkingDay, type WorkingCalendar } from '@/lib/calendar/working';
import { heldBlocks, pausedEnd } from './held';
import type { CoverLine, HeldInterval, PolicyTerms } from './terms';

/** What `countCover` found on the way to an end date, so that a person can be shown the sum. */
export type CoverCount = {
  startsOn: Day;
  term: string;
  originalEnd: Day;
  /** Whole days given back. */
  givenBack: number;
  /** True when a renewed minimum, not the term, decides the end. */
  isRenewed: boolean;
  /** The last day covered, until 24:00 in the workshop's zone. */
  end: Day;
  /** The last day a claim can be opened without asking a person. */
  lastClaimDay: Day;
  /** The last day a person may still decide; equal to lastClaimDay where there is no grace. */
  lastGraceDay: Day;
};

/**
 * The last day of a line by its term alone, counted from the original start: the start day is not counted, months end on
 * the same date or on the last day of the month (Regulation (EEC, Euratom) 1182/71 Art. 3; BGB 187-188).
 * Example: start 31 August 2025 with P6M ends on 28 February 2026. Refuses a term that is no period.
 */
export function originalEnd(line: Pick<CoverLine, 'startsOn' | 'term'>): Day {
  return addPeriod(line.startsOn, line.term);
}

/**
 * The last day a line covers: its original end moved by the days given back since it started, or its renewed minimum, moved by
 * those since it began, where that is later. A start recorded by mistake moves it by all days until it really began. Days held
 * before the line began, or after it ended, do not move it. The end itself is never rolled.
 * `intervals` are all of the certificate's chain; a unit still with us has `to: today`.
 * Example: 15 January 2026 with P12M, held 1 to 21 July 2026 under 'whole-days', ends on 4 February 2027.
 */
export function coverEnd(
  line: CoverLine,
  intervals: readonly HeldInterval[],
  terms: Pick<PolicyTerms, 'heldRule'>,
): Day {
  const byTerm = endByTerm(line, intervals, terms);
  const renewed = renewedEnd(line, intervals, terms);
  return renewed === null ? byTerm : maxDay(byTerm, renewed);
}

/**
 * The renewed minimum of a line with the days held since it was counted, paused like a term is: only by stays that began while
 * it ran. A stay that goes on past the day it was counted from, because the parcel came back and left again, moves it by
 * all of those days whatever the rule: it runs from the day the customer has the unit back. Null where there is none.
 * Example: until 18 February 2028, counted from 20 November 2027, and held 1 to 11 February: 28 February 2028.
 */
export function renewedEnd(
  line: Pick<CoverLine, 'renewedUntil' | 'renewedFrom'>,
  intervals: readonly HeldInterval[],
  terms: Pick<PolicyTerms, 'heldRule'>,
): Day | null {
  const { renewedUntil, renewedFrom = null } = line;
  if (renewedUntil === null || renewedFrom === null) return renewedUntil;
  const blocks = heldBlocks(intervals, renewedFrom);
  const [first, ...later] = blocks;
  const goesOn = first?.from === renewedFrom && compareDays(renewedFrom, renewedUntil) <= 0;
  if (!goesOn) return pausedEnd(renewedUntil, blocks, terms.heldRule);
  return pausedEnd(addDays(renewedUntil, first.days), later, terms.heldRule);
}

/** Where a start was recorded by mistake the term runs from the day it really began, whatever the rule: nothing ran that could pause. */
function endByTerm(
  line: CoverLine,
  intervals: readonly HeldInterval[],
  terms: Pick<PolicyTerms, 'heldRule'>,
): Day {
  const { startsOn } = line;
  const mistaken = intervals.filter(({ isByMistake, from }) => isByMistake === true && from === startsOn);
  const began = maxDay(startsOn, ...mistaken.map(({ to }) => to));
  const end = addDays(originalEnd(line), daysBetween(startsOn, began));
  return pausedEnd(end, heldBlocks(intervals, began), terms.heldRule);
}

/**
 * The last day on which the customer can open a claim: the end of cover, moved to the next working day where the policy
 * rolls it (the idea of Regulation 1182/71 Art. 3(4) and BGB 193: deadlines to act are rolled, cover is not).
 * A day that a certificate `stated` stands, though a closing day was opened or a holiday moved since; a later one counts.
 * Example: an end on Saturday 26 December 2026 in England can be claimed until Tuesday 29 December.
 */
export function lastClaimDay(
  end: Day,
  terms: Pick<PolicyTerms, 'rollLastDay'>,
  calendar: WorkingCalendar,
  stated: Day | null = null,
): Day {
  const counted = terms.rollLastDay ? nextWorkingDay(end, calendar) : end;
  return stated === null ? counted : maxDay(counted, stated);
}

/**
 * The last day on which a late claim goes to a person instead of being told that cover is over: grace is counted in
 * calendar days from the last claim day. Example: last claim day 29 December with 14 days of grace gives 12 January.
 */
export function lastGraceDay(
  end: Day,
  terms: Pick<PolicyTerms, 'rollLastDay' | 'graceDays'>,
  calendar: WorkingCalendar,
  stated: Day | null = null,
): Day {
  return addDays(lastClaimDay(end, terms, calendar, stated), terms.graceDays);
}

/** The whole sum for one line, as data; `explainCount` puts it in words. */
export function countCover(
  line: CoverLine,
  intervals: readonly HeldInterval[],
  terms: PolicyTerms,
  calendar: WorkingCalendar,
): CoverCount {
  const byTerm = endByTerm(line, intervals, terms);
  const end = coverEnd(line, intervals, terms);
  const first = originalEnd(line);
  return {
    startsOn: line.startsOn,
    term: line.term,
    originalEnd: first,
    givenBack: daysBetween(first, byTerm),
    isRenewed: compareDays(end, byTerm) > 0,
    end,
    lastClaimDay: lastClaimDay(end, terms, calendar, line.statedClaimDay),
    lastGraceDay: lastGraceDay(end, terms, calendar, line.statedClaimDay),
  };
}
