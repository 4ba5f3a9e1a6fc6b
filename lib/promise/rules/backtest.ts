import { compareDays, type Day } from '@/lib/calendar/day';
import type { WorkingCalendar } from '@/lib/calendar/working';
import { AIMS, shareOf } from './aim';
import { benchDays, queueMinutes } from './bench-days';
import { type BenchJob, type PromiseBasis, type PromiseSettings, promiseFrom } from './promise';

export type Backtest = {
  quantile: number;
  /** Promises made from finished jobs, and how many of them were kept. */
  counted: { promises: number; kept: number };
  /** Promises made by hand, while there were too few finished jobs. */
  byHand: { promises: number; kept: number };
  /** Jobs whose promised day has not passed yet, finished or not. */
  notDue: number;
};

export type BacktestSettings = Omit<PromiseSettings, 'quantile'> & {
  today: Day;
  /** Only the jobs that came last are promised again; all without it. The ones before still say how long work takes. */
  latest?: number;
};

export const BACKTEST_QUANTILES = AIMS.map(shareOf);

/**
 * How often promises would have been kept, had each job been promised on its arrival from what was known that day.
 * A promise is kept when the bench days it took are not more than promised; days that waited on the customer do not break it.
 * A job that is still here counts as soon as it has been here longer than promised: not kept. A job is left out, finished or not,
 * while its promised day lies ahead: were the quick ones counted sooner than the slow, the share would flatter.
 * The queue of each day is what was on the shelf, so nothing later than the arrival is looked at.
 * Example: of 40 jobs past their day 12 were promised by hand, 28 from history, 23 of these kept at 0.8: a share of 0.82.
 */
export function backtest(
  jobs: readonly BenchJob[],
  settings: BacktestSettings,
  quantiles: readonly number[] = BACKTEST_QUANTILES,
): Backtest[] {
  const { calendar, today, latest = jobs.length } = settings;
  const ownDaysOf = ownDaysByJob(jobs, settings);
  const asked = [...jobs].sort((a, b) => compareDays(b.arrivedOn, a.arrivedOn)).slice(0, latest);
  const looks = asked.map((job) => ({
    job,
    known: knownOn(jobs, job),
    here: daysHere(job, today, calendar),
  }));
  return quantiles.map((quantile) => {
    const result: Backtest = {
      quantile,
      counted: { promises: 0, kept: 0 },
      byHand: { promises: 0, kept: 0 },
      notDue: 0,
    };
    for (const { job, known, here } of looks) {
      const on = { ...job, on: job.arrivedOn };
      const promise = promiseFrom(on, known, ownDaysOf, { ...settings, quantile });
      if (here <= promise.days) {
        result.notDue += 1;
        continue;
      }
      const tally = tallyOf(result, promise.basis);
      tally.promises += 1;
      if (job.readyOn !== null && benchDays(job, calendar) <= promise.days) tally.kept += 1;
    }
    return result;
  });
}

// Own days look only at what was here before a job came, which is the same for all that came on one day.
function ownDaysByJob(jobs: readonly BenchJob[], { calendar, capacityMinutesDay }: BacktestSettings) {
  const queues = new Map<Day, number>();
  const queueOn = (on: Day): number => {
    const known = queues.get(on) ?? Math.floor(queueMinutes(jobs, on) / capacityMinutesDay);
    queues.set(on, known);
    return known;
  };
  const own = new Map<BenchJob, number>();
  for (const job of jobs)
    if (job.readyOn !== null) own.set(job, Math.max(0, benchDays(job, calendar) - queueOn(job.arrivedOn)));
  return (job: BenchJob) => own.get(job) ?? 0;
}

/** Bench days a job would have by today, were it still here: what its promise has had the chance to be broken in. */
function daysHere(job: BenchJob, today: Day, calendar: WorkingCalendar): number {
  return benchDays({ ...job, readyOn: today }, calendar);
}

// On its arrival nobody knew how the job itself, or one that came later, would go.
function knownOn(jobs: readonly BenchJob[], asked: BenchJob): BenchJob[] {
  return jobs.filter((job) => job !== asked && compareDays(job.arrivedOn, asked.arrivedOn) <= 0);
}

function tallyOf(result: Backtest, basis: PromiseBasis): { promises: number; kept: number } {
  return basis === 'by-hand' ? result.byHand : result.counted;
}

/** Promises kept of promises made, 0 to 1; null where none was made. */
export function shareKept({ promises, kept }: { promises: number; kept: number }): number | null {
  return promises === 0 ? null : kept / promises;
}
