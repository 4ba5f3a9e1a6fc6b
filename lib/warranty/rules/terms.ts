/*
 * Words of this room.
 * term: how long a cover line runs, an ISO 8601 duration. Cover line: one piece of work, or one part, with its own term.
 * Held: days the unit was out of the customer's hands because of a claim. Given back: held days added to the end of cover.
 * Renewed: after a covered claim, a date before which the line cannot end. Roll: the last day to open a claim moves to a working day.
 * Grace: days after that on which a person decides, not the program. Ruling: what the workshop decides after inspection.
 */
import type { Day } from '@/lib/calendar/day';
import { isPeriod, isWithinYears } from '@/lib/calendar/period';

export const START_EVENTS = ['handed-to-carrier', 'delivered', 'collected'] as const;
export type StartEvent = (typeof START_EVENTS)[number];

export const HELD_RULES = ['none', 'whole-days', 'from-seven-days', 'two-months-from-return'] as const;
export type HeldRule = (typeof HELD_RULES)[number];

/** What a warranty policy promises; a certificate keeps the terms it was issued under, whatever the policy says later. */
export type PolicyTerms = {
  startEvent: StartEvent;
  /** ISO 8601 duration, or null when work is not covered. */
  workTerm: string | null;
  /** ISO 8601 duration, or null when parts are not covered. */
  partsTerm: string | null;
  exclusions: string[];
  /** ISO 8601 duration counted from the return day of a covered claim, or null for none. */
  renewedMinimum: string | null;
  heldRule: HeldRule;
  rollLastDay: boolean;
  graceDays: number;
  transferable: boolean;
};

/** One covered piece of work or one covered part. `startsOn` and `term` are never edited once issued. */
export type CoverLine = {
  id: string;
  kind: 'work' | 'part';
  description: string;
  symptoms: string[];
  term: string;
  /** Day of the start event; the day itself is not counted. */
  startsOn: Day;
  /** The line cannot end before this day: a floor from a renewed minimum after a covered claim. */
  renewedUntil: Day | null;
  /** The return day that floor was counted from; days held after it move it. Absent where there is none. */
  renewedFrom?: Day | null;
  /** The last day to open a claim that was printed, which no change of the calendar takes back. Absent until issued. */
  statedClaimDay?: Day | null;
};

/** A stretch out of the customer's hands for a claim; a unit still with us is given `to: today`. */
export type HeldInterval = {
  /** The day the customer posted it or handed it in. */
  from: Day;
  /** The day it was handed back. */
  to: Day;
  claimNumber: string;
  /** Cover was counted from `from`, when the unit was recorded as gone by mistake, and really began on `to`. */
  isByMistake?: boolean;
};

export type TermsProblem = 'work-term' | 'parts-term' | 'nothing-covered' | 'renewed-minimum' | 'grace-days';

/** A longer grace would be a longer term under another name. */
export const MOST_GRACE_DAYS = 60;

/** Longer than anybody can claim, and every end stays a day of the calendar, which has years of four digits. */
export const MOST_TERM_YEARS = 100;

/** True for a term that can be promised: a whole-day ISO 8601 duration of at most 100 years. */
export function isTerm(text: string): boolean {
  return isPeriod(text) && isWithinYears(text, MOST_TERM_YEARS);
}

/** A kept term cut to 100 years, where it was saved before they were the most; what was booked under it can still leave. */
export function boundedTerm(kept: string | null): string | null {
  return kept === null || !isPeriod(kept) || isWithinYears(kept, MOST_TERM_YEARS)
    ? kept
    : `P${MOST_TERM_YEARS}Y`;
}

/**
 * Says what is wrong with a policy before it can be saved; an empty list means it may be used.
 * Refuses terms that are no whole-day ISO 8601 duration of at most 100 years, a policy that covers nothing, and a grace outside 0 to 60 days.
 * Example: workTerm '3 months' and the rest sound gives ['work-term'].
 */
export function termsProblems(terms: PolicyTerms): TermsProblem[] {
  const problems: TermsProblem[] = [];
  if (terms.workTerm !== null && !isTerm(terms.workTerm)) problems.push('work-term');
  if (terms.partsTerm !== null && !isTerm(terms.partsTerm)) problems.push('parts-term');
  if (terms.workTerm === null && terms.partsTerm === null) problems.push('nothing-covered');
  if (terms.renewedMinimum !== null && !isTerm(terms.renewedMinimum)) problems.push('renewed-minimum');
  if (!Number.isInteger(terms.graceDays) || terms.graceDays < 0 || terms.graceDays > MOST_GRACE_DAYS)
    problems.push('grace-days');
  return problems;
}
