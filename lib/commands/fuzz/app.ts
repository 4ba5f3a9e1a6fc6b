import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, openSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { build, isBuilt } from '../build';
import { startThrowawayPostgres } from '../throwaway-postgres';

export type FuzzApp = { origin: string; hasEnded: () => boolean; stop: () => Promise<void> };

/** Starts the built app with the demonstration in a folder of its own, and points this process at the same database. */
export async function startFuzzApp(o: { port: number; onServer: boolean }): Promise<FuzzApp> {
  // A build takes as long as the machine is busy; the start below is waited for by the clock.
  if (!isBuilt()) await build();
  const dataDir = mkdtempSync(path.join(tmpdir(), 'mendpost-fuzz-'));
  const server = o.onServer ? await startThrowawayPostgres() : undefined;
  const origin = `http://127.0.0.1:${o.port}`;
  Object.assign(process.env, {
    DATA_DIR: dataDir,
    PORT: String(o.port),
    APP_URL: origin,
    DATABASE_URL: server?.url ?? '',
    DEMO: 'on',
    JOBS: 'off',
    // The callers name an address each time: otherwise the limits would answer, and nothing behind them.
    TRUSTED_PROXY: 'on',
  });
  mkdirSync('test-results', { recursive: true });
  // What the app says while it is asked: a request a line, and every error with its trace.
  const log = `test-results/fuzz-app-${o.port}.log`;
  const out = openSync(log, 'w');
  const child = spawn(
    process.execPath,
    ['--conditions=react-server', '--import', 'tsx', 'lib/commands/start.ts'],
    { stdio: ['ignore', out, out] },
  );
  const ended = new Promise((resolve) => child.on('exit', resolve));
  const stop = async () => {
    const { disconnect } = await import('@/lib/db/client');
    await disconnect();
    child.kill('SIGTERM');
    await ended;
    server?.stop();
    rmSync(dataDir, { recursive: true, force: true });
  };
  for (let left = 9000; left > 0; left -= 1) {
    if (child.exitCode !== null) break;
    if ((await fetch(`${origin}/ready`).catch(() => undefined))?.ok) {
      return { origin, hasEnded: () => child.exitCode !== null, stop };
    }
    await wait(200);
  }
  await stop();
  throw new Error(`The app did not start.\n${readFileSync(log, 'utf8').slice(-4000)}`);
}
