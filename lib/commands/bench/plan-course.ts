import type { Stage } from '@/lib/jobs/rules/stages';
import type { Chance } from './chance';

/** When a job did what, in milliseconds; null for what it has not come to. */
export type Course = {
  stage: Stage;
  bookedAt: number;
  arrivedAt: number | null;
  assessedAt: number | null;
  askedAt: number | null;
  workedAt: number | null;
  provedAt: number | null;
  readyAt: number | null;
  paidAt: number | null;
  sentBackAt: number | null;
  closedAt: number | null;
  cancelledAt: number | null;
  mayBeClaim: boolean;
};

/** What is in hand at any time, whatever lies behind. */
export const IN_HAND: readonly (readonly [stage: Stage, jobs: number])[] = [
  ['booked', 12],
  ['arrived', 6],
  ['assessing', 8],
  ['awaiting-approval', 6],
  ['awaiting-parts', 6],
  ['on-bench', 10],
  ['proving', 6],
  ['ready', 10],
];
const OPEN: readonly Stage[] = IN_HAND.flatMap(([stage, jobs]) => Array.from({ length: jobs }, () => stage));
const CANCELLED_SHARE = 0.02;
const HOUR = 3_600_000;
const DAY = 24 * HOUR;

/** The newest jobs are the ones in hand; all before are back with their people, or were cancelled. */
export function planCourse(o: {
  n: number;
  jobs: number;
  years: number;
  end: number;
  chance: Chance;
}): Course {
  const { n, jobs, end, chance } = o;
  const left = jobs - n;
  const stage = left < OPEN.length ? OPEN[left] : undefined;
  const nothing = {
    arrivedAt: null,
    assessedAt: null,
    askedAt: null,
    workedAt: null,
    provedAt: null,
    readyAt: null,
    paidAt: null,
    sentBackAt: null,
    closedAt: null,
    cancelledAt: null,
  };
  if (stage) {
    const bookedAt = atWork(end - (2 + left / 4) * DAY, chance);
    return {
      ...nothing,
      ...openCourse(stage, bookedAt),
      stage,
      bookedAt,
      mayBeClaim: ['booked', 'arrived', 'assessing'].includes(stage),
    };
  }
  const span = o.years * 365 * DAY - 40 * DAY;
  const bookedAt = atWork(end - 40 * DAY - span * (1 - n / jobs), chance);
  if (chance.happens(CANCELLED_SHARE))
    return { ...nothing, stage: 'cancelled', bookedAt, cancelledAt: bookedAt + DAY, mayBeClaim: false };
  const arrivedAt = bookedAt + (2 + chance.below(4)) * DAY;
  const assessedAt = arrivedAt + chance.below(20) * HOUR;
  const workedAt = assessedAt + (4 + chance.below(60)) * HOUR;
  const provedAt = workedAt + (1 + chance.below(5)) * HOUR;
  const readyAt = provedAt + HOUR;
  const paidAt = readyAt + (2 + chance.below(40)) * HOUR;
  const sentBackAt = paidAt + (2 + chance.below(20)) * HOUR;
  return {
    ...nothing,
    stage: 'closed',
    bookedAt,
    arrivedAt,
    assessedAt,
    workedAt,
    provedAt,
    readyAt,
    paidAt,
    sentBackAt,
    closedAt: sentBackAt + 14 * DAY,
    mayBeClaim: true,
  };
}

function openCourse(stage: Stage, bookedAt: number): Partial<Course> {
  const reached = (...stages: Stage[]) => stages.includes(stage);
  const at = (hours: number, is: boolean) => (is ? bookedAt + hours * HOUR : null);
  const isHere = stage !== 'booked';
  const isWorkedOn = reached('on-bench', 'proving', 'ready');
  return {
    arrivedAt: at(24, isHere),
    assessedAt: at(26, isHere && stage !== 'arrived'),
    askedAt: at(28, stage === 'awaiting-approval'),
    workedAt: at(30, isWorkedOn),
    provedAt: at(32, reached('proving', 'ready')),
    readyAt: at(33, stage === 'ready'),
  };
}

/** The same day at an hour when somebody works, in UTC. */
function atWork(instant: number, chance: Chance): number {
  return Math.floor(instant / DAY) * DAY + 9 * HOUR + chance.below(8 * 60) * 60_000;
}
