import { dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { runOfStamps } from '@/lib/jobs/rules/run-of-stamps';
import { STAGE_WORDS, type Stage } from '@/lib/jobs/rules/stages';
import type { Stamp } from './stamps';

/** A job's run of stamps as the docket draws it, with dates in the workshop's zone. */
export function stampSteps(
  job: { stage: Stage; reached: readonly { stage: Stage; at: Date }[] },
  o: { locale: string; timeZone: string },
): Stamp[] {
  return runOfStamps(job.stage, job.reached).map((step) => ({
    key: step.stage,
    label: STAGE_WORDS[step.stage].label,
    state: step.state,
    on: step.at ? formatDay(dayInZone(step.at, o.timeZone), o.locale, 'short') : undefined,
  }));
}
