import { compareDays, type Day } from '@/lib/calendar/day';
import { benchDays, ownDays } from './bench-days';
import { type BenchJob, type PromiseBasis, type PromiseSettings, promiseFrom } from './promise';

export type Backtest = {
  quantile: number;
  /** Promises made from finished jobs, and how many of them were kept. */
  counted: { promises: number; kept: number };
  /** Promises made by hand, while there were too few finished jobs. */
  byHand: { promises: number; kept: number };
};

export const BACKTEST_QUANTILES = [0.5, 0.7, 0.8, 0.9, 0.95] as const;

/**
 * How often promises would have been kept, had each finished job been promised on its arrival from what was known that day.
 * A promise is kept when the bench days it took are not more than promised; days that waited on the customer do not break it.
 * The queue of each day is what was on the shelf, so nothing later than the arrival is looked at.
 * Example: of 40 finished jobs 12 were promised by hand, 28 from history, 23 of these kept at 0.8: a share of 0.82.
 */
export function backtest(
  jobs: readonly BenchJob[],
  settings: Omit<PromiseSettings, 'quantile'>,
  quantiles: readonly number[] = BACKTEST_QUANTILES,
): Backtest[] {
  const finished = jobs.filter((job) => job.readyOn !== null);
  // Own days look only at what was here before the job came, so they are the same for every promise they are used in.
  const own = new Map(
    finished.map((job) => [job, ownDays(job, jobs, settings.calendar, settings.capacityMinutesDay)] as const),
  );
  const ownDaysOf = (job: BenchJob) => own.get(job) ?? 0;
  return quantiles.map((quantile) => {
    const result: Backtest = {
      quantile,
      counted: { promises: 0, kept: 0 },
      byHand: { promises: 0, kept: 0 },
    };
    for (const job of finished) {
      const asked = { ...job, on: job.arrivedOn };
      const promise = promiseFrom(asked, knownOn(jobs, job), ownDaysOf, { ...settings, quantile });
      const tally = tallyOf(result, promise.basis);
      tally.promises += 1;
      if (benchDays(job, settings.calendar) <= promise.days) tally.kept += 1;
    }
    return result;
  });
}

// On its arrival nobody knew how the job itself, or one that came later, would go.
function knownOn(jobs: readonly BenchJob[], asked: BenchJob): BenchJob[] {
  return jobs.filter((job) => job !== asked && isEarlier(job, asked.arrivedOn));
}

function isEarlier(job: BenchJob, on: Day): boolean {
  return compareDays(job.arrivedOn, on) <= 0;
}

function tallyOf(result: Backtest, basis: PromiseBasis): { promises: number; kept: number } {
  return basis === 'by-hand' ? result.byHand : result.counted;
}

/** Promises kept of promises made, 0 to 1; null where none was made. */
export function shareKept({ promises, kept }: { promises: number; kept: number }): number | null {
  return promises === 0 ? null : kept / promises;
}
