import { compareDays, type Day } from '@/lib/calendar/day';
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

/**
 * The promise once an answer is written down that had come before its price lapsed. The lapse had put more days on it than were waited
 * for: where that day stands still (`lapsedFrom`, the one before it), it is counted again by the day of the answer. A day that the
 * workshop has told since stays, and so does the one of the lapse where the earlier one has gone by: nobody is promised a past day.
 * A letter is known of only since the lapse (`heardOn` null). The job did not wait for it any longer than until then, so what the lapse
 * counted stands.
 *
 * Promised Wednesday 2026-12-09, asked on the 3rd, lapsed on the 7th to Friday the 11th, told on the 4th and written down on the 8th:
 * waited 1 working day, so the promise is Thursday 2026-12-10.
 */
export function promiseAfterLapse(
  wait: Omit<Wait, 'endedOn'> & { heardOn: Day | null; lapsedFrom: Day | null; today: Day },
  calendar: WorkingCalendar,
): PromiseAfterWait & { isCountedAgain: boolean } {
  const { heardOn, lapsedFrom, promisedOn, furtherDays } = wait;
  const counted =
    heardOn &&
    lapsedFrom &&
    promiseAfterWait({ ...wait, promisedOn: lapsedFrom, endedOn: heardOn }, calendar);
  return counted && compareDays(counted.on, wait.today) > 0
    ? { ...counted, isCountedAgain: true }
    : { on: addWorkingDays(promisedOn, furtherDays, calendar), waitedDays: 0, isCountedAgain: false };
}

/** A promise that was moved, and why in the customer's words. */
export type PromiseMove = { from: Day; to: Day; reason: string };

/**
 * The day a unit is judged by once the workshop had moved its promise: the day before that move, and later by the working days
 * that every further move for the customer's sake added; one that was counted again after a lapse takes some of them off.
 *
 * Promised Thursday 2026-12-10, moved by the workshop to the 11th, then from the 11th to the 18th for an answer that took 5
 * working days: Thursday 2026-12-17.
 */
export function fairDay(
  promisedOn: Day,
  waits: readonly Pick<PromiseMove, 'from' | 'to'>[],
  calendar: WorkingCalendar,
): Day {
  const waited = waits.reduce((sum, { from, to }) => sum + workingDaysBetween(from, to, calendar), 0);
  return addWorkingDays(promisedOn, Math.max(0, waited), calendar);
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

/**
 * Why a promise moved with an answer that was written down after its price had lapsed, in the customer's words.
 *
 * lateReason({ waitedDays: 2, furtherDays: 0, isCountedAgain: true })
 *   -> 'Your answer had come in time: the job waited 2 working days for it.'
 */
export function lateReason(o: { waitedDays: number; furtherDays: number; isCountedAgain: boolean }): string {
  const { waitedDays, furtherDays } = o;
  const inTime =
    waitedDays > 0
      ? `Your answer had come in time: the job waited ${workingDaysWords(waitedDays)} for it.`
      : 'Your answer had come in time: the job did not wait for it.';
  const more = moveReason({ waitedDays: 0, furtherDays });
  return [o.isCountedAgain ? inTime : '', more].filter((sentence) => sentence !== '').join(' ');
}

/** Why a promise moved whose unit had stood ready, in the customer's words. */
export function reopenReason(readyDays: number, furtherDays = 0): string {
  const sentences = [
    readyDays > 0
      ? `The unit had been ready for ${workingDaysWords(readyDays)} when it was taken up again.`
      : '',
    moveReason({ waitedDays: 0, furtherDays }),
  ];
  return sentences.filter((sentence) => sentence !== '').join(' ');
}
