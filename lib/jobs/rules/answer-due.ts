import { type Day, maxDay } from '@/lib/calendar/day';
import { addWorkingDays, type WorkingCalendar, workingDaysBetween } from '@/lib/calendar/working';
import type { ClaimStanding } from '@/lib/warranty/rules/claim-standing';

/** The last day of an answer that was promised, and the working days it is behind: 0 up to and on that day. */
export type AnswerDue = { on: Day; daysOver: number };

export type AnswerClock = { today: Day; answerDays: number; calendar: WorkingCalendar };

/**
 * Until when an answer is promised that is counted from a day: a unit's arrival, a contest, a message. That day is not counted.
 *
 * With 2 working days an answer counted from Friday 4 December is due on Tuesday 8 December, and on Thursday the 10th 2 days over.
 */
export function answerDue(since: Day, o: AnswerClock): AnswerDue {
  const on = addWorkingDays(since, o.answerDays, o.calendar);
  return { on, daysOver: Math.max(0, workingDaysBetween(on, o.today, o.calendar)) };
}

/**
 * The day a claim's ruling is counted from: its contest, or the day the owner took a ruling back, whichever is later, otherwise the arrival of the unit. Null before the unit is here and once
 * the customer was told: a ruling that waits for a second look is not told yet.
 */
export function rulingSince(o: {
  standing: ClaimStanding;
  arrivedOn: Day | null;
  contestedOn: Day | null;
  reopenedOn: Day | null;
}): Day | null {
  if (o.standing === 'ruled' || o.standing === 'closed') return null;
  const { contestedOn, reopenedOn } = o;
  if (contestedOn && reopenedOn) return maxDay(contestedOn, reopenedOn);
  return reopenedOn ?? contestedOn ?? o.arrivedOn;
}
