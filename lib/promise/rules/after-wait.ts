import type { Day } from '@/lib/calendar/day';
import {
  addWorkingDays,
  type WorkingCalendar,
  workingDaysBetween,
  workingDaysWords,
} from '@/lib/calendar/working';
import type { Stage } from '@/lib/jobs/rules/stages';

/** Where a unit does not wait for us; who takes it up from there moves its promise by the days it stood. */
export const PROMISE_WAITS = ['awaiting-approval', 'ready'] as const satisfies readonly Stage[];

export type PromiseWait = (typeof PROMISE_WAITS)[number];

export type Wait = {
  promisedOn: Day;
  /** the day the customer was asked */
  askedOn: Day;
  /** the day the question was answered, taken back or lapsed */
  endedOn: Day;
  /** working days that what was agreed takes beside the work promised so far; 0 for none */
  furtherDays: number;
};

export type PromiseAfterWait = {
  on: Day;
  /** working days that the question waited */
  waitedDays: number;
};

/**
 * The promise after a question to the customer: its clock stops while the question waits, so the day moves by the working
 * days it waited, and by those that the extra work takes. Refuses negative and broken counts.
 *
 * Promised Wednesday 2026-12-09, asked Thursday 2026-12-03, answered Monday 2026-12-07, 1 day more: waited 2 working
 * days, so the promise is Monday 2026-12-14.
 */
export function promiseAfterWait(wait: Wait, calendar: WorkingCalendar): PromiseAfterWait {
  const waitedDays = Math.max(0, workingDaysBetween(wait.askedOn, wait.endedOn, calendar));
  return { on: addWorkingDays(wait.promisedOn, waitedDays + wait.furtherDays, calendar), waitedDays };
}

/** A promise that was moved, and why in the customer's words. */
export type PromiseMove = { from: Day; to: Day; reason: string };

/**
 * The day a unit is judged by once the workshop had moved its promise: the day before that move, and later by the working days
 * that every further move for the customer's sake added.
 *
 * Promised Thursday 2026-12-10, moved by the workshop to the 11th, then from the 11th to the 18th for an answer that took 5
 * working days: Thursday 2026-12-17.
 */
export function fairDay(
  promisedOn: Day,
  waits: readonly Pick<PromiseMove, 'from' | 'to'>[],
  calendar: WorkingCalendar,
): Day {
  const waited = waits.reduce(
    (sum, { from, to }) => sum + Math.max(0, workingDaysBetween(from, to, calendar)),
    0,
  );
  return addWorkingDays(promisedOn, waited, calendar);
}

/**
 * Why a promise moved, in the customer's words.
 *
 * moveReason({ waitedDays: 2, furtherDays: 1 })
 *   -> 'The job waited 2 working days for your answer. The extra work takes 1 working day more.'
 */
export function moveReason(o: { waitedDays: number; furtherDays: number }): string {
  const sentences = [
    o.waitedDays > 0 ? `The job waited ${workingDaysWords(o.waitedDays)} for your answer.` : '',
    o.furtherDays > 0 ? `The extra work takes ${workingDaysWords(o.furtherDays)} more.` : '',
  ];
  return sentences.filter((sentence) => sentence !== '').join(' ');
}

/** Why a promise moved whose unit had stood ready, in the customer's words. */
export function reopenReason(readyDays: number): string {
  return `The unit had been ready for ${workingDaysWords(readyDays)} when it was taken up again.`;
}
