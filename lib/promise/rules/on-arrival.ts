import { type Day, dayFromDate } from '@/lib/calendar/day';
import { agreedOf } from '@/lib/quotes/rules/agreed';

/** What of a job that is still to arrive decides its promise. Dates as stored: midnight in UTC of a day. */
export type ArrivingJob = {
  withdrawUntil: Date | null;
  startRequestedAt: Date | null;
  quotes: readonly { revisions: readonly { state: string; workingDays: number | null }[] }[];
};

/**
 * What the promise of an arriving job is reckoned with beside its repair: work waits for the end of the period to withdraw where the
 * customer did not ask for an earlier start, and a quote that names its days is kept to.
 */
export function onArrival(job: ArrivingJob): { waitsUntil: Day | null; quotedDays: number | null } {
  const agreed = agreedOf(job);
  return {
    waitsUntil: job.withdrawUntil && !job.startRequestedAt ? dayFromDate(job.withdrawUntil) : null,
    quotedDays: agreed?.workingDays ?? null,
  };
}
