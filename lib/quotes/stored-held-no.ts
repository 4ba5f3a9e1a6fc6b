import type { Day } from '@/lib/calendar/day';
import { type JobRecord, readStage } from '@/lib/jobs/records';
import { declinedBy, heldNo, noOfJob } from './rules/held-no';
import { isInspectionOnly } from './rules/inspection-fee';

/** The price of a job that its customer declined, and to which a yes may still come on that day; null where there is none. */
export function heldNoOfJob(job: JobRecord, today: Day) {
  const no = noOfJob({ stage: readStage(job.stage), events: job.events });
  return heldNo(job.quotes[0]?.revisions ?? [], { no, today });
}

/** The price of a job that its customer declined, held still or not: a yes to it may have been told in time. */
export function standingNoOfJob(job: JobRecord) {
  const no = noOfJob({ stage: readStage(job.stage), events: job.events });
  return declinedBy(job.quotes[0]?.revisions ?? [], { no });
}

/**
 * Whether what had been agreed to when a price was declined is an inspection alone, so that no repair was begun. It was replaced by
 * what the no came to.
 */
export function isNoAfterInspection(job: JobRecord, declined: { revision: number }): boolean {
  const stood = job.quotes[0]?.revisions.findLast(
    ({ revision, state, decidedAt }) =>
      revision < declined.revision && state === 'replaced' && decidedAt !== null,
  );
  return stood !== undefined && isInspectionOnly(stood);
}
