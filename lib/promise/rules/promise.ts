/*
 * Words of this room.
 * promise: the day a unit is said to be ready. bench days: working days from arrival to ready, without those that waited on the
 * customer. queue: bench minutes of the units that were already here. own days: bench days without those the queue took.
 * by hand: the days stated in the catalogue, used while there are too few finished jobs to count.
 */
import { compareDays, type Day } from '@/lib/calendar/day';
import { addWorkingDays, type WorkingCalendar } from '@/lib/calendar/working';
import { shareOf, USUAL_AIM } from './aim';
import { ownDays, queueMinutes } from './bench-days';

/** A job as far as promises go. `readyOn` is null while it is still here. */
export type BenchJob = {
  repairId: string;
  familyId: string;
  /** Bench minutes the catalogue plans for it. */
  minutes: number;
  /** Working days the catalogue states for it. */
  statedDays: number;
  arrivedOn: Day;
  readyOn: Day | null;
  /** Stretches in which it waited on the customer; `to` is null while it still waits. */
  waited: readonly { from: Day; to: Day | null }[];
};

/** What a promise rests on: finished jobs of a class, the days of the catalogue, or days that a quote named. */
export type PromiseBasis = 'repair' | 'family' | 'all' | 'by-hand' | 'quoted';

export type Asked = {
  repairId: string;
  familyId: string;
  statedDays: number;
  /** Working days from arrival that the quote names which the customer agreed to; null where it names none. */
  quotedDays?: number | null;
  on: Day;
};

export type PromiseSettings = {
  calendar: WorkingCalendar;
  /** Bench minutes of a working day. */
  capacityMinutesDay: number;
  /** Share of jobs that should be ready by their promise. */
  quantile?: number;
  /** Finished jobs below which a wider class is taken, and at last the catalogue's days. */
  enough?: number;
};

export type PromiseAnswer = {
  on: Day;
  /** Working days from arrival. */
  days: number;
  basis: PromiseBasis;
  /** Finished jobs behind it; 0 when by hand. */
  jobs: number;
  /** Working days of these that the queue ahead takes. */
  queueDays: number;
};

export const ENOUGH_JOBS = 12;

/** Fit to be shown wherever a promise by hand is. */
export const BY_HAND = 'an estimate by hand';

/**
 * The day to promise for a unit that arrives on `on`, from the workshop's own finished jobs.
 *
 * Jobs of the same repair count; with fewer than twelve of them those of the family, then all; with fewer still the days stated in
 * the catalogue, as an estimate by hand. The quantile of their own days, by nearest rank, is what four of five needed
 * once the queue is taken off; where jobs of other repairs had to be counted, never less than the catalogue states for this one, which
 * they do not say is short. The queue of today is then put on. Never less than one working day.
 * Days that were agreed to in a quote go before all of this. Refuses a quantile outside 0 to 1 and a bench without capacity.
 * Example: twelve jobs of 1 to 12 own days at 0.8, and 400 minutes ahead at 360 a day, give 10 + 1 = 11 working days.
 */
export function promiseFor(
  asked: Asked,
  jobs: readonly BenchJob[],
  settings: PromiseSettings,
): PromiseAnswer {
  const { calendar, capacityMinutesDay } = settings;
  return promiseFrom(asked, jobs, (job) => ownDays(job, jobs, calendar, capacityMinutesDay), settings);
}

/** promiseFor with the own days of each job worked out by the caller, who asks for many promises on the same jobs. */
export function promiseFrom(
  asked: Asked,
  jobs: readonly BenchJob[],
  ownDaysOf: (job: BenchJob) => number,
  settings: PromiseSettings,
): PromiseAnswer {
  const { calendar, capacityMinutesDay, quantile = shareOf(USUAL_AIM), enough = ENOUGH_JOBS } = settings;
  refuseSettings(quantile, capacityMinutesDay);
  const { quotedDays } = asked;
  if (quotedDays) {
    const on = addWorkingDays(asked.on, quotedDays, calendar);
    return { on, days: quotedDays, basis: 'quoted', jobs: 0, queueDays: 0 };
  }
  const known = jobs.filter((job) => job.readyOn !== null && compareDays(job.readyOn, asked.on) <= 0);
  const chosen = chooseClass(known, asked, enough);
  if (!chosen) {
    const days = Math.max(1, asked.statedDays);
    return { on: addWorkingDays(asked.on, days, calendar), days, basis: 'by-hand', jobs: 0, queueDays: 0 };
  }
  const own = chosen.jobs.map(ownDaysOf);
  const queueDays = Math.floor(queueMinutes(jobs, asked.on) / capacityMinutesDay);
  const least = chosen.basis === 'repair' ? 0 : asked.statedDays;
  const days = Math.max(1, Math.max(least, nearestRank(own, quantile)) + queueDays);
  const on = addWorkingDays(asked.on, days, calendar);
  return { on, days, basis: chosen.basis, jobs: chosen.jobs.length, queueDays };
}

function chooseClass(
  known: readonly BenchJob[],
  asked: { repairId: string; familyId: string },
  enough: number,
): { basis: PromiseBasis; jobs: readonly BenchJob[] } | null {
  const classes = [
    { basis: 'repair' as const, jobs: known.filter((job) => job.repairId === asked.repairId) },
    { basis: 'family' as const, jobs: known.filter((job) => job.familyId === asked.familyId) },
    { basis: 'all' as const, jobs: known },
  ];
  return classes.find((each) => each.jobs.length >= enough) ?? null;
}

/**
 * The smallest value that at least the given share of the values do not exceed (nearest rank).
 * Example: 0.8 of 1 to 12 is 10, since 10 of 12 is the first share of 0.8 or more. Refuses an empty list.
 */
export function nearestRank(values: readonly number[], quantile: number): number {
  // As numbers of one kind, which sort several times faster: a page looks back at thousands of promises.
  const sorted = Float64Array.from(values).sort();
  const value = sorted[Math.max(1, Math.ceil(quantile * sorted.length)) - 1];
  if (value === undefined) throw new RangeError('No values to take a quantile of');
  return value;
}

function refuseSettings(quantile: number, capacityMinutesDay: number): void {
  if (!(quantile > 0 && quantile <= 1)) throw new RangeError(`Not a quantile: ${quantile}`);
  if (!(capacityMinutesDay > 0)) throw new RangeError(`Not a capacity: ${capacityMinutesDay} minutes a day`);
}
