import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { z } from 'zod';

export type Counts = { passed: number; failed: number; failures: string[] };
export type Step = { name: string; run: () => Counts | Promise<Counts> };

/**
 * Runs the steps in order, prints each one's time, and stops at the first that fails. Returns what was counted; a step
 * that fails without having counted anything counts as one failure, so that the summary cannot look green.
 */
export async function runSteps(steps: Step[]): Promise<Counts> {
  const total: Counts = { passed: 0, failed: 0, failures: [] };
  for (const { name, run } of steps) {
    console.log(`\n== ${name}`);
    const began = performance.now();
    const counts = await attempt(run);
    total.passed += counts.passed;
    total.failed += counts.failed;
    total.failures.push(...counts.failures.map((failure) => `${name}: ${failure}`));
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
    return { passed: 0, failed: 0, failures: [] };
  };
}

async function attempt(run: Step['run']): Promise<Counts> {
  try {
    return await run();
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    return { passed: 0, failed: 1, failures: [String(error)] };
  }
}

/** Ends the process with what failed, by name, and the summary as its last line. */
export function finish({ passed, failed, failures }: Counts): never {
  for (const failure of failures) console.log(`Failed: ${failure}`);
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

const unitReport = z.object({
  numPassedTests: z.number(),
  numFailedTests: z.number(),
  testResults: z.array(
    z.object({
      name: z.string(),
      status: z.string(),
      assertionResults: z.array(z.object({ fullName: z.string(), status: z.string() })),
    }),
  ),
});

export function runUnitTests(filters: string[], env: Record<string, string> = {}): Counts {
  const file = 'test-results/units.json';
  rmSync(file, { force: true });
  const isOnServer = env['TEST_DATABASE_URL'] ?? process.env['TEST_DATABASE_URL'];
  console.log(
    isOnServer
      ? 'Databases: copies on a server.'
      : 'Databases: embedded. Skipped: tests/races, which need a server (npm run test:server).',
  );
  const args = ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${file}`, ...filters];
  const code = status('vitest/vitest.mjs', args, env);
  if (!existsSync(file)) throw new Error('The tests did not run.');
  const report = unitReport.parse(JSON.parse(readFileSync(file, 'utf8')));
  const failures = report.testResults.flatMap(({ name, status, assertionResults }) => {
    const failed = assertionResults.filter((test) => test.status === 'failed').map((test) => test.fullName);
    const named = failed.length === 0 && status === 'failed' ? ['the file as a whole'] : failed;
    return named.map((test) => `${path.relative('.', name)}: ${test}`);
  });
  return settle({ passed: report.numPassedTests, failed: report.numFailedTests, failures }, code);
}

type Suite = {
  specs: { title: string; file: string; line: number; tests: Walk[] }[];
  suites?: Suite[] | undefined;
};
type Walk = z.infer<typeof walk>;
const walk = z.object({ projectName: z.string(), status: z.string() });
const suite: z.ZodType<Suite> = z.object({
  specs: z.array(z.object({ title: z.string(), file: z.string(), line: z.number(), tests: z.array(walk) })),
  suites: z.lazy(() => z.array(suite)).optional(),
});
const walkReport = z.object({
  stats: z.object({ expected: z.number(), unexpected: z.number(), flaky: z.number() }),
  suites: z.array(suite),
});

export function runWalks(env: Record<string, string> = {}, filters: string[] = []): Counts {
  const file = 'test-results/walks.json';
  rmSync(file, { force: true });
  const code = status('@playwright/test/cli.js', ['test', ...filters], env);
  if (!existsSync(file)) throw new Error('The browser tests did not run.');
  const { stats, suites } = walkReport.parse(JSON.parse(readFileSync(file, 'utf8')));
  const failures = suites.flatMap(failedWalks);
  return settle({ passed: stats.expected, failed: stats.unexpected + stats.flaky, failures }, code);
}

function failedWalks({ specs, suites = [] }: Suite): string[] {
  const own = specs.flatMap(({ title, file, line, tests }) =>
    tests
      .filter(({ status }) => status === 'unexpected' || status === 'flaky')
      .map(({ projectName }) => `[${projectName}] ${file}:${line} ${title}`),
  );
  return [...own, ...suites.flatMap(failedWalks)];
}

/** A file that cannot be loaded, or an error outside every test, fails the run without failing a test. */
function settle(counts: Counts, code: number | null): Counts {
  if (code === 0 || counts.failed > 0) return counts;
  return { ...counts, failed: 1, failures: [...counts.failures, 'ended with an error outside its tests'] };
}
