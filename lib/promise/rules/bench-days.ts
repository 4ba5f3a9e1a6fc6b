import { compareDays, type Day, maxDay, minDay } from '@/lib/calendar/day';
import { type WorkingCalendar, workingDaysBetween } from '@/lib/calendar/working';
import type { BenchJob } from './promise';

/**
 * Working days from arrival to ready, without those that waited on the customer; days two waits share are taken off once.
 * Refuses a job that is not ready. Example: arrived Monday, ready Friday, waited Tuesday to Wednesday: 4 - 1 = 3.
 */
export function benchDays(job: BenchJob, calendar: WorkingCalendar): number {
  const { readyOn, arrivedOn } = job;
  if (readyOn === null) throw new RangeError('A job that is not ready has no bench days yet');
  const clipped = job.waited
    .map(({ from, to }) => ({ from: maxDay(from, arrivedOn), to: minDay(to ?? readyOn, readyOn) }))
    .filter(({ from, to }) => compareDays(from, to) < 0)
    .sort((a, b) => compareDays(a.from, b.from));
  let waited = 0;
  let countedTo = arrivedOn;
  for (const { from, to } of clipped) {
    const start = maxDay(from, countedTo);
    if (compareDays(start, to) >= 0) continue;
    waited += workingDaysBetween(start, to, calendar);
    countedTo = to;
  }
  return Math.max(0, workingDaysBetween(arrivedOn, readyOn, calendar) - waited);
}

/**
 * Bench minutes of the units that are here at the start of a day: arrived before it, not ready before it, not waiting on the
 * customer. Example: two units of 60 and 90 minutes on the shelf, one of 30 waiting on a yes, gives 150.
 */
export function queueMinutes(jobs: readonly BenchJob[], on: Day): number {
  return jobs
    .filter((job) => isHere(job, on) && !isWaiting(job, on))
    .reduce((sum, job) => sum + job.minutes, 0);
}

/** Bench days of a finished job less the whole days the queue took that it found on arrival; never below nothing. */
export function ownDays(
  job: BenchJob,
  jobs: readonly BenchJob[],
  calendar: WorkingCalendar,
  capacityMinutesDay: number,
): number {
  const queueDays = Math.floor(queueMinutes(jobs, job.arrivedOn) / capacityMinutesDay);
  return Math.max(0, benchDays(job, calendar) - queueDays);
}

function isHere({ arrivedOn, readyOn }: BenchJob, on: Day): boolean {
  return compareDays(arrivedOn, on) < 0 && (readyOn === null || compareDays(readyOn, on) >= 0);
}

function isWaiting({ waited }: BenchJob, on: Day): boolean {
  return waited.some(
    ({ from, to }) => compareDays(from, on) < 0 && (to === null || compareDays(to, on) >= 0),
  );
}
