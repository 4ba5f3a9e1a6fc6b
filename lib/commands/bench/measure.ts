import { spawnSync } from 'node:child_process';
import type { JobSample } from './samples';

export type Measured = { page: string; p50: number; p95: number; queries: number };

/** A filled database: where it is, what its readings took, and jobs to ask its pages for. */
export type Filled = { jobs: number; readings: Measured[]; samples: JobSample[] };

/** Runs a step of the bench in a process of its own: settings are read once a process, and a step has a database of its own. */
export function runStep<T>(step: string, given: readonly string[], environment: Record<string, string>): T {
  const { status, stdout } = spawnSync(
    process.execPath,
    [
      ...['--no-deprecation', '--expose-gc', '--conditions=react-server', '--import', 'tsx'],
      `lib/commands/bench/${step}.ts`,
      ...given,
    ],
    { env: { ...process.env, ...environment }, encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'] },
  );
  if (status !== 0) throw new Error(`${step} ${given.join(' ')} failed`);
  return JSON.parse(stdout.trim().split('\n').at(-1) ?? 'null');
}

/** One row a page: p95 at both sizes, how much it grew, and its queries. */
export function printReadings(few: Filled, many: Filled): void {
  console.log(`| reading | p95 at ${few.jobs} | p95 at ${many.jobs} | grew (p50) | grew (p95) | queries |`);
  console.log('| --- | --- | --- | --- | --- | --- |');
  for (const [i, after] of many.readings.entries()) {
    const before = few.readings[i];
    if (!before) continue;
    const ms = (n: number) => `${n.toFixed(1)} ms`;
    const grew = (a: number, b: number) => `${(b / a).toFixed(2)} x`;
    console.log(
      `| ${after.page} | ${ms(before.p95)} | ${ms(after.p95)} | ${grew(before.p50, after.p50)} | ${grew(before.p95, after.p95)} | ${after.queries} |`,
    );
  }
}
