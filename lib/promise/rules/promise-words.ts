import { formatDay } from '@/lib/calendar/format';
import { BY_HAND, type PromiseAnswer } from './promise';

/**
 * A promise before there is a unit, in the customer's words: the day it would be ready if it came today, and what that
 * rests on.
 *
 * { on: 2026-12-10, days: 7, basis: 'repair', jobs: 34, … } in en-GB
 *   -> 'If it were here today: by Thursday 10 December 2026. Four of five of our last 34 jobs of this kind needed no longer,
 *      today’s queue counted in.'
 */
export function promiseWords(answer: PromiseAnswer, locale: string): string {
  const day = `If it were here today: by ${formatDay(answer.on, locale, 'weekday')}.`;
  if (answer.basis === 'by-hand') return `${day} That is ${BY_HAND}.`;
  if (answer.basis === 'quoted') return `${day} That is what our quote names.`;
  return `${day} Four of five of our last ${answer.jobs} ${KINDS[answer.basis]} needed no longer, today’s queue counted in.`;
}

const KINDS = {
  repair: 'jobs of this kind',
  family: 'jobs on units like it',
  all: 'jobs',
} as const;
