import { spawnSync } from 'node:child_process';

export type Measured = { page: string; p50: number; p95: number; queries: number };

/**
 * Fills one database and measures its readings in a process of its own: settings are read once a process, so that two
 * databases cannot be asked by the same one.
 */
export async function measureAt(url: string, jobs: number): Promise<Measured[]> {
  const { status, stdout } = spawnSync(
    process.execPath,
    [
      '--no-deprecation',
      '--conditions=react-server',
      '--import',
      'tsx',
      'lib/commands/bench/measure-process.ts',
      String(jobs),
    ],
    { env: { ...process.env, DATABASE_URL: url }, encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'] },
  );
  if (status !== 0) throw new Error(`measuring ${jobs} jobs failed`);
  return JSON.parse(stdout.trim().split('\n').at(-1) ?? '[]');
}

/** One row a page: p95 at both sizes, how much it grew, and its queries. */
export function printTable(sizes: readonly number[], measured: readonly (readonly Measured[])[]): void {
  const [few, many] = measured;
  console.log(`| reading | p95 at ${sizes[0]} | p95 at ${sizes[1]} | grew (p50) | grew (p95) | queries |`);
  console.log('| --- | --- | --- | --- | --- | --- |');
  for (const [i, after] of (many ?? []).entries()) {
    const before = few?.[i];
    if (!before) continue;
    const ms = (n: number) => `${n.toFixed(1)} ms`;
    const grew = (a: number, b: number) => `${(b / a).toFixed(2)} x`;
    console.log(
      `| ${after.page} | ${ms(before.p95)} | ${ms(after.p95)} | ${grew(before.p50, after.p50)} | ${grew(before.p95, after.p95)} | ${after.queries} |`,
    );
  }
}
