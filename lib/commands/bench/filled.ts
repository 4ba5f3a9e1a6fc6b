import { once } from 'node:events';
import type { Most } from './figures';
import { nextAnswer, type Place, startStep } from './run-step';
import type { JobSample } from './samples';

export type KnownReading = { page: string; runs: number; most: Most; queries: number };

/** What a filling process tells once everything is written. */
export type Filling = { samples: JobSample[]; readings: KnownReading[] };

export type Filled = Filling & {
  jobs: number;
  place: Place;
  /** milliseconds that a reading takes, of another job for each `i` */
  time: (reading: number, i: number) => Promise<number>;
  /** lets go of the database, which an app may open then */
  close: () => Promise<void>;
};

type Wanted = { jobs: number; repairs: number; isTimed: boolean; place: Place };

/** Fills an empty database; its process stays, so that two of them can be asked in turn. */
export async function fill(o: Wanted): Promise<Filled> {
  const child = startStep(
    'fill-process',
    [String(o.jobs), String(o.repairs), ...(o.isTimed ? ['timed'] : [])],
    o.place,
  );
  const filling = await nextAnswer<Filling>(child, `of ${o.jobs} jobs`);
  return {
    ...filling,
    jobs: o.jobs,
    place: o.place,
    async time(reading, i) {
      const answered = nextAnswer<{ took: number }>(child, 'of readings');
      child.send({ reading, i });
      return (await answered).took;
    },
    async close() {
      if (child.exitCode !== null) return;
      const ended = once(child, 'exit');
      child.disconnect();
      await ended;
    },
  };
}
