import type { Day } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { workingDaysWords } from '@/lib/calendar/working';
import type { PromiseAim } from './aim';
import type { KeptTally } from './kept';
import { BY_HAND, type PromiseAnswer } from './promise';

/**
 * A promise before there is a unit, in the customer's words: the day it would be ready if it came today, and what that
 * rests on, with the share of jobs that it aims at.
 *
 * { on: 2026-12-10, days: 7, basis: 'repair', jobs: 34, … } at an aim of 80 in en-GB
 *   -> 'If it were here today: by Thursday 10 December 2026. Four of five of our last 34 jobs of this kind needed no longer,
 *      today’s queue counted in.'
 */
export function promiseWords(answer: PromiseAnswer, o: { locale: string; aim: PromiseAim }): string {
  const day = `If it were here today: by ${formatDay(answer.on, o.locale, 'weekday')}.`;
  if (answer.basis === 'by-hand') return `${day} That is ${BY_HAND}.`;
  if (answer.basis === 'quoted') return `${day} That is what our quote names.`;
  return `${day} ${SHARES[o.aim]} of our last ${answer.jobs} ${KINDS[answer.basis]} needed no longer, today’s queue counted in.`;
}

/** How long a booked repair takes, as far as it was said before it was booked. */
export type StatedTime = {
  /** working days from the day its unit is here */
  days: number;
  /** named by the quote it was booked at, which is kept to; otherwise stated on the price list */
  isQuoted: boolean;
  /** work does not start before the end of this day */
  waitsUntil: Day | null;
};

/**
 * How long it takes, to whoever has booked and not posted yet. What the price list states is no promise: the one made on arrival
 * goes by the workshop's own jobs and the queue of that day, and may be a later day.
 *
 * { days: 5, isQuoted: false, waitsUntil: null }
 *   -> 'The day it arrives we write to you and promise you a date. Our price list reckons with 5 working days from then; a full
 *      bench takes longer.'
 */
export function statedTimeWords({ days, isQuoted, waitsUntil }: StatedTime, locale: string): string {
  const orLater = waitsUntil ? `, or from ${formatDay(waitsUntil, locale, 'weekday')} if that is later` : '';
  const from = `${workingDaysWords(days)} from then${orLater}`;
  const stated = isQuoted
    ? `Our quote names ${from}.`
    : `Our price list reckons with ${from}; a full bench takes longer.`;
  return `The day it arrives we write to you and promise you a date. ${stated}`;
}

/**
 * How often promises were kept, beside a new one; null where too few were made to say. What jobs needed is true of any day chosen so;
 * this is not.
 *
 * { promises: 40, kept: 31 } -> 'Of our last 40 promises whose day has come we kept 31.'
 */
export function keptWords(tally: KeptTally | null): string | null {
  return tally && `Of our last ${tally.promises} promises whose day has come we kept ${countWords(tally)}.`;
}

function countWords({ promises, kept }: KeptTally): string {
  if (kept === 0) return 'none';
  return kept === promises ? 'all' : String(kept);
}

const KINDS = {
  repair: 'jobs of this kind',
  family: 'jobs on units like it',
  all: 'jobs',
} as const;

const SHARES: Record<PromiseAim, string> = {
  50: 'Half',
  70: 'Seven in ten',
  80: 'Four of five',
  90: 'Nine in ten',
  95: 'Nineteen of twenty',
};
