import { dayInZone } from '@/lib/calendar/day';
import { type AnswerClock, type AnswerDue, answerDue, rulingSince } from '@/lib/jobs/rules/answer-due';
import { readCalendar, type WorkshopCard } from '@/lib/workshop/records';
import { claimStanding } from './rules/claim-standing';

/** What a promised answer is counted with at an instant. */
export async function readAnswerClock(workshop: WorkshopCard, now: Date): Promise<AnswerClock> {
  const today = dayInZone(now, workshop.timeZone);
  return { today, answerDays: workshop.answerDays, calendar: await readCalendar(workshop, today) };
}

/** Until when the ruling on a claim is promised; null where none is awaited, or the unit is not here. */
export function rulingDue(
  claim: {
    state: string;
    ruling: string | null;
    contestedAt: Date | null;
    reopenedAt: Date | null;
    job: { arrivedAt: Date | null };
  },
  clock: AnswerClock,
  timeZone: string,
): AnswerDue | null {
  const { contestedAt, reopenedAt, job } = claim;
  const since = rulingSince({
    standing: claimStanding(claim),
    arrivedOn: job.arrivedAt && dayInZone(job.arrivedAt, timeZone),
    contestedOn: contestedAt && dayInZone(contestedAt, timeZone),
    reopenedOn: reopenedAt && dayInZone(reopenedAt, timeZone),
  });
  return since && answerDue(since, clock);
}
