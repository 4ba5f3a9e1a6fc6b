import { formatDay } from '@/lib/calendar/format';
import { datedStamps } from '@/lib/jobs/rules/run-of-stamps';
import type { Stage } from '@/lib/jobs/rules/stages';
import type { Stamp } from './stamps';

/**
 * A job's run of stamps as the docket draws it, with dates in the workshop's zone. One that was opened for the parcel of a booking
 * ends with what it saw: its unit goes on, and nothing was cancelled.
 */
export function stampSteps(
  job: { stage: Stage; reached: readonly { stage: Stage; at: Date }[]; isOfBooking?: boolean },
  o: { locale: string; timeZone: string },
): Stamp[] {
  const run = datedStamps(job.stage, job.reached, o.timeZone);
  const shown = job.isOfBooking ? run.filter(({ stage }) => stage !== job.stage) : run;
  return shown.map(({ stage, label, state, day }) => ({
    key: stage,
    label,
    state,
    on: day ? formatDay(day, o.locale, 'short') : undefined,
  }));
}
