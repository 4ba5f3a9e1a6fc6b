import { formatDay } from '@/lib/calendar/format';
import { datedStamps } from '@/lib/jobs/rules/run-of-stamps';
import type { Stage } from '@/lib/jobs/rules/stages';
import type { Stamp } from './stamps';

/** A job's run of stamps as the docket draws it, with dates in the workshop's zone. */
export function stampSteps(
  job: { stage: Stage; reached: readonly { stage: Stage; at: Date }[] },
  o: { locale: string; timeZone: string },
): Stamp[] {
  return datedStamps(job.stage, job.reached, o.timeZone).map(({ stage, label, state, day }) => ({
    key: stage,
    label,
    state,
    on: day ? formatDay(day, o.locale, 'short') : undefined,
  }));
}
