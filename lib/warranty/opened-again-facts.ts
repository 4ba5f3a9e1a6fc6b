import { compareDays, type Day, dayInZone } from '@/lib/calendar/day';
import type { JobRecord } from '@/lib/jobs/records';
import { offerOf } from '@/lib/quotes/rules/agreed';
import type { WorkshopCard } from '@/lib/workshop/records';

/**
 * What a customer is told besides, whose claim is looked at again: that a price they were asked about is off, and that the unit is not
 * ready any more, with the day it is promised for now unless that has passed. `job` is as it was before.
 */
export function openedAgainFacts(
  job: JobRecord,
  opened: { promisedOn: Day | null },
  { workshop, now }: { workshop: WorkshopCard; now: Date },
) {
  const asked = offerOf(job);
  const { promisedOn } = opened;
  const isAhead = promisedOn !== null && compareDays(promisedOn, dayInZone(now, workshop.timeZone)) > 0;
  return {
    ...(asked && job.stage === 'awaiting-approval' && { askedGross: asked.grossMinor }),
    ...(job.stage === 'ready' && { wasReady: true, ...(isAhead && { promisedOn }) }),
  };
}
