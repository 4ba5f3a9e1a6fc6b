import { spawn, spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { memoryOf, processorTimeOf } from './process-tree';

export type BenchApp = {
  origin: string;
  /** seconds from the start of the command to the first page that came back whole */
  firstPage: number;
  /** resident memory of all its processes, MB: the embedded database is in one of them */
  memory: () => number;
  /** processor's milliseconds that they have used so far */
  processorTime: () => number;
  stop: () => Promise<void>;
};

const left = new Set(['.git', '.next', 'data', 'node_modules', 'shots', 'test-results', 'playwright-report']);

// Like every page it goes through the proxy and the outermost layout; it reads nothing and shows one line.
const bare = `export default function Bare() {
  return <main>Bare</main>;
}
`;

/** Copies this app into a folder and adds one page to compare with, /bare, that the app itself does not have. */
export function copyApp(folder: string): void {
  mkdirSync(folder, { recursive: true });
  const there = readdirSync(folder);
  if (there.length > 0 && !existsSync(path.join(folder, 'app/bare')))
    throw new Error(`${folder} holds something else than a copy of the app.`);
  // Of an earlier copy only what takes long to make again is kept.
  for (const name of there) {
    if (name !== '.next') rmSync(path.join(folder, name), { recursive: true, force: true });
  }
  for (const name of readdirSync('.')) {
    if (!left.has(name)) cpSync(name, path.join(folder, name), { recursive: true });
  }
  linkModules(path.join(folder, 'node_modules'));
  mkdirSync(path.join(folder, 'app/bare'));
  writeFileSync(path.join(folder, 'app/bare/page.tsx'), bare);
}

/** Links are made in a moment; between two disks they cannot be. */
function linkModules(to: string): void {
  const link = (how: string) => spawnSync('cp', [how, path.resolve('node_modules'), to]).status === 0;
  if (link('-al')) return;
  rmSync(to, { recursive: true, force: true });
  if (!link('-a')) throw new Error('node_modules could not be copied');
}

/** Builds the copy's pages, unless they are, so that a start afterwards only starts. */
export async function buildCopy(folder: string): Promise<void> {
  const script = `import('./lib/commands/generate-client.ts').then((m) => m.generateClient()).then(() => import('./lib/commands/build.ts')).then((m) => m.isBuilt() || m.build())`;
  console.error('building the copy');
  const given = ['--conditions=react-server', '--import', 'tsx', '-e', script];
  const child = spawn(process.execPath, given, { cwd: folder, stdio: ['ignore', 'ignore', 'inherit'] });
  process.once('exit', () => child.kill('SIGTERM'));
  const code = await new Promise((resolve) => child.on('close', resolve));
  if (code !== 0) throw new Error('The copy could not be built.');
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
        DEMO: 'on',
        JOBS: 'off',
        // Each request names an address of its own: otherwise the limits would answer, and nothing behind them.
        TRUSTED_PROXY: 'on',
        LOG_LEVEL: 'error',
      },
      stdio: ['ignore', 'ignore', 'inherit'],
    },
  );
  const { pid = -1 } = child;
  const ended = new Promise((resolve) => child.on('exit', resolve));
  process.once('exit', () => child.kill('SIGTERM'));
  const stop = async () => {
    child.kill('SIGTERM');
    await ended;
  };
  for (const end = began + 120_000; performance.now() < end && child.exitCode === null; ) {
    const answer = await fetch(`${origin}/prices`).catch(() => undefined);
    if (answer?.ok && (await answer.text()).includes('</html>')) {
      return {
        origin,
        firstPage: (performance.now() - began) / 1000,
        memory: () => memoryOf(pid),
        processorTime: () => processorTimeOf(pid),
        stop,
      };
    }
    await wait(20);
  }
  await stop();
  throw new Error('The copy did not start.');
}
