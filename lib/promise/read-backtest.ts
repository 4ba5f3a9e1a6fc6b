import { dayInZone } from '@/lib/calendar/day';
import { readCalendar, readWorkshop } from '@/lib/workshop/records';
import { readBenchJobs } from './records';
import { type Backtest, backtest } from './rules/backtest';
import { ENOUGH_JOBS, USUAL_QUANTILE } from './rules/promise';

export type PromiseReport = {
  /** share of jobs that a promise is meant to be kept for */
  quantile: number;
  /** finished jobs below which the catalogue's days are promised by hand */
  enough: number;
  finished: number;
  atWork: number;
  results: Backtest[];
};

/** How often promises would have been kept on the workshop's own jobs, by the share they aim at. */
export async function readBacktest(now: Date): Promise<PromiseReport> {
  const workshop = await readWorkshop();
  const today = dayInZone(now, workshop.timeZone);
  const [calendar, jobs] = await Promise.all([
    readCalendar(workshop, today),
    readBenchJobs({ zone: workshop.timeZone, now }),
  ]);
  const finished = jobs.filter((job) => job.readyOn !== null).length;
  return {
    quantile: USUAL_QUANTILE,
    enough: ENOUGH_JOBS,
    finished,
    atWork: jobs.length - finished,
    results: backtest(jobs, { calendar, capacityMinutesDay: workshop.capacityMinutesDay }),
  };
}
