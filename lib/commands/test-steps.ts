import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { z } from 'zod';

export type Counts = { passed: number; failed: number };
export type Step = { name: string; run: () => Counts | Promise<Counts> };

/**
 * Runs the steps in order, prints each one's time, and stops at the first that fails. Returns what was counted; a step
 * that fails without having counted anything counts as one failure, so that the summary cannot look green.
 */
export async function runSteps(steps: Step[]): Promise<Counts> {
  const total: Counts = { passed: 0, failed: 0 };
  for (const { name, run } of steps) {
    console.log(`\n== ${name}`);
    const began = performance.now();
    const counts = await attempt(run);
    total.passed += counts.passed;
    total.failed += counts.failed;
    const seconds = ((performance.now() - began) / 1000).toFixed(1);
    console.log(`== ${name}: ${counts.failed > 0 ? 'failed' : 'done'} in ${seconds} s`);
    if (counts.failed > 0) break;
  }
  return total;
}

/** A step that holds or throws, with no tests to count. */
export function uncounted(work: () => unknown): Step['run'] {
  return async () => {
    await work();
    return { passed: 0, failed: 0 };
  };
}

async function attempt(run: Step['run']): Promise<Counts> {
  try {
    return await run();
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    return { passed: 0, failed: 1 };
  }
}

/** Ends the process with the summary as its last line. */
export function finish({ passed, failed }: Counts): never {
  console.log(`\n${passed} passed, ${failed} failed`);
  process.exit(failed > 0 || passed === 0 ? 1 : 0);
}

/** Runs a program of node_modules in the open; throws when it fails. */
export function run(file: string, args: string[], env: Record<string, string> = {}): void {
  if (status(file, args, env) !== 0) throw new Error(`${file.split('/').at(-1)} failed.`);
}

function status(file: string, args: string[], env: Record<string, string>): number | null {
  return spawnSync(process.execPath, [`node_modules/${file}`, ...args], {
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, ...env },
  }).status;
}

const unitReport = z.object({ numPassedTests: z.number(), numFailedTests: z.number(), success: z.boolean() });

export function runUnitTests(filters: string[], env: Record<string, string> = {}): Counts {
  const file = 'test-results/units.json';
  rmSync(file, { force: true });
  const args = ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${file}`, ...filters];
  const code = status('vitest/vitest.mjs', args, env);
  if (!existsSync(file)) throw new Error('The tests did not run.');
  const report = unitReport.parse(JSON.parse(readFileSync(file, 'utf8')));
  return settle({ passed: report.numPassedTests, failed: report.numFailedTests }, code);
}

const walkReport = z.object({
  stats: z.object({ expected: z.number(), unexpected: z.number(), flaky: z.number() }),
});

export function runWalks(env: Record<string, string> = {}, filters: string[] = []): Counts {
  const file = 'test-results/walks.json';
  rmSync(file, { force: true });
  const code = status('@playwright/test/cli.js', ['test', ...filters], env);
  if (!existsSync(file)) throw new Error('The browser tests did not run.');
  const { stats } = walkReport.parse(JSON.parse(readFileSync(file, 'utf8')));
  return settle({ passed: stats.expected, failed: stats.unexpected + stats.flaky }, code);
}

/** A file that cannot be loaded, or an error outside every test, fails the run without failing a test. */
function settle(counts: Counts, code: number | null): Counts {
  return code !== 0 && counts.failed === 0 ? { ...counts, failed: 1 } : counts;
}
