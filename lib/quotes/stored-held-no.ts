import type { Day } from '@/lib/calendar/day';
import { type JobRecord, readStage } from '@/lib/jobs/records';
import { heldNo, noOfJob } from './rules/held-no';

/** The price of a job that its customer declined, and to which a yes may still come on that day; null where there is none. */
export function heldNoOfJob(job: JobRecord, today: Day) {
  const no = noOfJob({ stage: readStage(job.stage), events: job.events });
  return heldNo(job.quotes[0]?.revisions ?? [], { no, today });
}
