import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';

export type BenchApp = {
  origin: string;
  /** seconds from the start of the command to the first page that came back whole */
  firstPage: number;
  /** resident memory of the process that serves pages, MB */
  memory: () => number;
  stop: () => Promise<void>;
};

const left = new Set(['.git', '.next', 'data', 'node_modules', 'shots', 'test-results', 'playwright-report']);

// Like every page it goes through the proxy and the outermost layout; it reads nothing and shows one line.
const bare = `export default function Bare() {
  return <p>Bare</p>;
}
`;

/** Copies this app and adds one page to compare with, /bare, that the app itself does not have. */
export function copyApp(): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'mendpost-bench-'));
  for (const name of readdirSync('.')) {
    if (!left.has(name)) cpSync(name, path.join(folder, name), { recursive: true });
  }
  const link = (how: string) =>
    spawnSync('cp', [how, path.resolve('node_modules'), path.join(folder, 'node_modules')]).status === 0;
  // Links are made in a moment; between two disks they cannot be.
  if (!link('-al')) {
    rmSync(path.join(folder, 'node_modules'), { recursive: true, force: true });
    if (!link('-a')) throw new Error('node_modules could not be copied');
  }
  mkdirSync(path.join(folder, 'app/bare'));
  writeFileSync(path.join(folder, 'app/bare/page.tsx'), bare);
  return folder;
}

/** Builds the copy's pages, unless they are, so that a start afterwards only starts. */
export function buildCopy(folder: string): void {
  const script = `import('./lib/commands/generate-client.ts').then((m) => m.generateClient()).then(() => import('./lib/commands/build.ts')).then((m) => m.isBuilt() || m.build())`;
  const { status, stderr } = spawnSync(
    process.execPath,
    ['--conditions=react-server', '--import', 'tsx', '-e', script],
    { cwd: folder, encoding: 'utf8' },
  );
  if (status !== 0) throw new Error(`The copy could not be built:\n${stderr}`);
}

/** Starts the copy as `npm start` does, on a database that is filled. */
export async function startCopy(
  folder: string,
  o: { port: number; dataDir: string; databaseUrl: string },
): Promise<BenchApp> {
  const origin = `http://127.0.0.1:${o.port}`;
  const began = performance.now();
  const child = spawn(
    process.execPath,
    ['--conditions=react-server', '--import', 'tsx', 'lib/commands/start.ts'],
    {
      cwd: folder,
      env: {
        ...process.env,
        PORT: String(o.port),
        APP_URL: origin,
        DATA_DIR: o.dataDir,
        DATABASE_URL: o.databaseUrl,
        DEMO: 'off',
        JOBS: 'off',
        // Each request names an address of its own: otherwise the limits would answer, and nothing behind them.
        TRUSTED_PROXY: 'on',
        LOG_LEVEL: 'error',
      },
      stdio: ['ignore', 'ignore', 'inherit'],
    },
  );
  const ended = new Promise((resolve) => child.on('exit', resolve));
  const stop = async () => {
    child.kill('SIGTERM');
    await ended;
  };
  for (const end = began + 120_000; performance.now() < end && child.exitCode === null; ) {
    const answer = await fetch(`${origin}/prices`).catch(() => undefined);
    if (answer?.ok && (await answer.text()).includes('</html>')) {
      return { origin, firstPage: (performance.now() - began) / 1000, memory: () => memoryOf(child), stop };
    }
    await wait(20);
  }
  await stop();
  throw new Error('The copy did not start.');
}

/** The start command watches over the process that serves; of its children that is the one that holds most. */
function memoryOf(child: ChildProcess): number {
  const { stdout } = spawnSync('ps', ['-A', '-o', 'pid=,ppid=,rss='], { encoding: 'utf8' });
  const rows = stdout.split('\n').map((line) => line.trim().split(/\s+/).map(Number));
  const below = (parent: number): number[][] =>
    rows.filter(([, by]) => by === parent).flatMap((row) => [row, ...below(row[0] ?? -1)]);
  return Math.max(0, ...below(child.pid ?? -1).map(([, , kilobytes]) => (kilobytes ?? 0) / 1024));
}
