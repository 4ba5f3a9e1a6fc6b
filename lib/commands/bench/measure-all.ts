import type { Asked } from './ask-pages';
import { startCopy } from './bench-app';
import { browserFigures } from './browser-figures';
import type { ServerLog } from './count-in-log';
import type { Figure } from './figures';
import { type Filled, fill } from './filled';
import { pageFigures } from './page-figures';
import { readingFigures } from './reading-figures';
import { nextAnswer, type Place, startStep } from './run-step';
import { throughputFigures } from './throughput-figures';

export const PARTS = ['booking', 'readings', 'throughput', 'pages', 'browser', 'certificates'] as const;
export type BenchPart = (typeof PARTS)[number];

export type Plan = {
  /** few jobs and many */
  sizes: readonly [number, number];
  /** on the price list at many jobs */
  repairs: number;
  parts: readonly BenchPart[];
  /** makes an empty database of that name and says where it is */
  place: (name: string) => Promise<Place>;
  log: ServerLog | undefined;
  /** a built copy of the app, with a page to compare with */
  app: () => Promise<string>;
  port: number;
};

/** Measures the parts asked for on one kind of database. A part that fails says so in its row, and the others go on. */
export async function measureAll(plan: Plan, tell: (figure: Figure) => void): Promise<void> {
  const needs = (...parts: BenchPart[]) => parts.some((part) => plan.parts.includes(part));
  const measure = async (part: BenchPart, work: () => AsyncIterable<Figure>) => {
    if (!needs(part)) return;
    console.error(`measuring ${part}`);
    try {
      for await (const figure of work()) tell(figure);
    } catch (error) {
      tell({ what: part, value: String(error), reached: false, isFault: true });
    }
  };
  await measure('booking', async function* () {
    yield* await runStep('booking', await plan.place('booking'));
  });
  const isServed = needs('throughput', 'pages', 'browser');
  if (isServed || needs('readings')) {
    // Built while the databases are filled, and before anything is measured.
    const built = isServed ? plan.app() : undefined;
    built?.catch(() => {});
    const [atFew, atMany] = plan.sizes;
    const isTimed = needs('readings');
    const few = await fill({ jobs: atFew, repairs: 0, isTimed, place: await plan.place('few') });
    const many = await fill({
      jobs: atMany,
      repairs: plan.repairs,
      isTimed,
      place: await plan.place('many'),
    });
    await built;
    await measure('readings', () => readingFigures(few, many));
    await few.close();
    await many.close();
    if (isServed) {
      await withApps(plan, few, many, async (fewAsked, manyAsked) => {
        await measure('throughput', () => throughputFigures(fewAsked, manyAsked));
        await measure('pages', () => pageFigures(fewAsked, manyAsked, plan.log));
        await measure('browser', () => browserFigures(manyAsked));
      });
    }
  }
}

/** What a step measures that needs no filled database: a booking, and certificates, which need none at all. */
export function runStep(
  step: 'booking' | 'certificates',
  place: Partial<Place>,
  given: readonly string[] = [],
): Promise<Figure[]> {
  return nextAnswer(startStep(step, given, place), step);
}

async function withApps(
  plan: Plan,
  few: Filled,
  many: Filled,
  work: (few: Asked, many: Asked) => Promise<void>,
): Promise<void> {
  const folder = await plan.app();
  const stops: (() => Promise<void>)[] = [];
  try {
    const open = async ({ place, samples, jobs }: Filled, port: number): Promise<Asked> => {
      const app = await startCopy(folder, {
        port,
        dataDir: place.DATA_DIR,
        databaseUrl: place.DATABASE_URL,
      });
      stops.push(app.stop);
      // Read once the settings of this process stand, which they do not at its start.
      const { signIn, STAFF } = await import('../fuzz/staff');
      const [owner] = STAFF;
      if (!owner) throw new Error('nobody can sign in');
      return { jobs, app, samples, cookie: await signIn(app.origin, owner) };
    };
    await work(await open(few, plan.port), await open(many, plan.port + 1));
  } finally {
    for (const stop of stops) await stop();
  }
}
