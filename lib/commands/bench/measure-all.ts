import { rmSync } from 'node:fs';
import { loadavg } from 'node:os';
import type { Server } from '../throwaway-postgres';
import { buildCopy, copyApp, startCopy } from './bench-app';
import { browserFigures } from './browser-figures';
import { type Figure, printFigures } from './figures';
import { httpFigures } from './http-figures';
import { type Filled, printReadings, runStep } from './measure';

export const PARTS = ['readings', 'pages', 'browser', 'booking', 'pdf'] as const;
export type BenchPart = (typeof PARTS)[number];

type Place = { DATABASE_URL: string; DATA_DIR: string };
type Plan = {
  sizes: readonly [number, number];
  parts: readonly BenchPart[];
  /** makes an empty database of that name and says where it is */
  place: (name: string) => Promise<Place>;
  server: Server | undefined;
  port: number;
  /** a copy that an earlier run built and kept */
  app: string | undefined;
};

/** Measures the parts asked for and prints one table of each kind. */
export async function measureAll(plan: Plan): Promise<void> {
  const load = () => `load average ${loadavg()[0]?.toFixed(1)}`;
  console.log(`Begun at a ${load()}.`);
  const needs = (...parts: BenchPart[]) => parts.some((part) => plan.parts.includes(part));
  if (needs('booking')) printFigures(runStep<Figure[]>('booking', [], await plan.place('booking')));
  if (needs('pdf')) printFigures(runStep<Figure[]>('certificates', [], await plan.place('pdf')));
  if (needs('readings', 'pages', 'browser')) {
    const fill = async (jobs: number) => {
      const place = await plan.place(`jobs_${jobs}`);
      const given = [String(jobs), ...(needs('readings') ? ['timed'] : [])];
      return { place, filled: runStep<Filled>('measure-process', given, place) };
    };
    const few = await fill(plan.sizes[0]);
    const many = await fill(plan.sizes[1]);
    if (needs('readings')) printReadings(few.filled, many.filled);
    if (needs('pages', 'browser')) await overHttp(plan, few, many);
  }
  console.log(`Ended at a ${load()}.`);
}

type Side = { place: Place; filled: Filled };

async function overHttp(plan: Plan, few: Side, many: Side): Promise<void> {
  const folder = plan.app ?? copyApp();
  const stops: (() => Promise<void>)[] = [];
  try {
    buildCopy(folder);
    const open = async ({ place, filled }: Side, port: number) => {
      const app = await startCopy(folder, { port, dataDir: place.DATA_DIR, databaseUrl: place.DATABASE_URL });
      stops.push(app.stop);
      // Reads this process's settings, which the sign-in does not depend on.
      const { signIn, STAFF } = await import('../fuzz/staff');
      const [owner] = STAFF;
      if (!owner) throw new Error('nobody can sign in');
      const cookie = await signIn(app.origin, owner);
      return { jobs: filled.jobs, asked: { app, samples: filled.samples, cookie } };
    };
    const atFew = await open(few, plan.port);
    const atMany = await open(many, plan.port + 1);
    if (plan.parts.includes('pages')) printFigures(await httpFigures(atFew, atMany, plan.server));
    if (plan.parts.includes('browser')) printFigures(await browserFigures(atMany.asked));
  } finally {
    for (const stop of stops) await stop();
    if (!plan.app) rmSync(folder, { recursive: true, force: true });
  }
}
