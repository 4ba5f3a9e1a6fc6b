import { addDays, type Day, dayInZone, isoWeekday } from '@/lib/calendar/day';
import { readCalendar, readWorkshop } from '@/lib/workshop/records';
import { readBenchJobs } from './records';
import { readAim, shareOf } from './rules/aim';
import { type Backtest, backtest } from './rules/backtest';
import { queueMinutes } from './rules/bench-days';
import { ENOUGH_JOBS } from './rules/promise';

export type PromiseReport = {
  /** share of jobs that a promise is meant to be kept for */
  quantile: number;
  /** finished jobs below which the catalogue's days are promised by hand */
  enough: number;
  finished: number;
  atWork: number;
  /** how many jobs, the latest ones, were promised again */
  tested: number;
  results: Backtest[];
  /** bench minutes that waited at the start of each of the last weeks, and of today */
  queue: { on: Day; minutes: number }[];
};

/** Enough for an interval of about six points either way, and few enough to be reckoned while the page is opened. */
const TESTED = 200;
const WEEKS = 7;

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
    quantile: shareOf(readAim(workshop.promiseAim)),
    enough: ENOUGH_JOBS,
    finished,
    atWork: jobs.length - finished,
    tested: Math.min(TESTED, jobs.length),
    results: backtest(jobs, {
      calendar,
      capacityMinutesDay: workshop.capacityMinutesDay,
      today,
      latest: TESTED,
    }),
    queue: weekStarts(today).map((on) => ({ on, minutes: queueMinutes(jobs, on) })),
  };
}

/** The last Mondays, and today where it is none. */
function weekStarts(today: Day): Day[] {
  const monday = addDays(today, 1 - isoWeekday(today));
  const mondays = Array.from({ length: WEEKS }, (_, week) => addDays(monday, (week + 1 - WEEKS) * 7));
  return today === monday ? mondays : [...mondays, today];
}
