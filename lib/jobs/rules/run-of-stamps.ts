import { type Day, dayInZone } from '@/lib/calendar/day';
import { STAGE_WORDS, STAMP_RUN, type Stage } from './stages';

export type StampState = 'done' | 'now' | 'waiting' | 'skipped' | 'stopped';
export type StampStep = { stage: Stage; state: StampState; at: Date | null };

/** A stage as a page or a paper draws it: its name, how it stands and its day in the workshop's zone. */
export type DatedStamp = { stage: Stage; label: string; state: StampState; day: Day | null };

/** Stages outside the usual run: drawn where the job left it. */
const ASIDE: readonly Stage[] = ['cancelled', 'declined', 'unclaimed'];
/** Stages that many jobs never see; left out of the run unless the job saw them. */
const OPTIONAL: readonly Stage[] = ['awaiting-approval', 'awaiting-parts'];

/**
 * The run of stamps of a job: each stage of the usual run with its state, in order; a stage aside the run is put after
 * the last one reached. A stage a later one has passed without it is skipped.
 *
 * runOfStamps('on-bench', [booked, arrived, assessing, on-bench]) ends with proving, ready, sent-back, closed waiting.
 */
export function runOfStamps(present: Stage, reached: readonly { stage: Stage; at: Date }[]): StampStep[] {
  const when = new Map(reached.map((each) => [each.stage, each.at]));
  const isAside = ASIDE.includes(present);
  const at = STAMP_RUN.indexOf(present);
  const lastReached = Math.max(...STAMP_RUN.map((stage, index) => (when.has(stage) ? index : -1)));
  const here = isAside ? lastReached : at;
  const steps: StampStep[] = [];
  for (const [index, stage] of STAMP_RUN.entries()) {
    const seen = when.get(stage) ?? null;
    if (OPTIONAL.includes(stage) && seen === null && stage !== present) continue;
    if (stage === present) steps.push({ stage, state: stage === 'closed' ? 'done' : 'now', at: seen });
    else if (index < here || (isAside && index === here))
      steps.push({ stage, state: seen ? 'done' : 'skipped', at: seen });
    else if (!isAside) steps.push({ stage, state: 'waiting', at: null });
    if (isAside && index === here)
      steps.push({ stage: present, state: 'stopped', at: when.get(present) ?? null });
  }
  // A unit that was declined or left with us still goes back; a cancelled booking goes nowhere.
  if (present === 'declined' || present === 'unclaimed') {
    for (const stage of ['ready', 'sent-back', 'closed'] as const) {
      if (!steps.some((step) => step.stage === stage)) steps.push({ stage, state: 'waiting', at: null });
    }
  }
  return steps;
}

/** The run of stamps with the name and the day of each stage; `zone` is the workshop's, an IANA name. */
export function datedStamps(
  present: Stage,
  reached: readonly { stage: Stage; at: Date }[],
  zone: string,
): DatedStamp[] {
  return runOfStamps(present, reached).map(({ stage, state, at }) => ({
    stage,
    label: STAGE_WORDS[stage].label,
    state,
    day: at ? dayInZone(at, zone) : null,
  }));
}
