import { spawn } from 'node:child_process';
import { setTimeout as wait } from 'node:timers/promises';
import { config } from '@/lib/config';
import { childEnvironment } from './child-environment';

/** `stop` lets it finish what it has in hand, `kill` does not. */
export type App = { stop: () => Promise<unknown>; kill: () => void; ended: Promise<string> };

// The app gives itself 10 s for open requests and the message in hand, after the time it still takes new ones.
const patience = 20_000 + config.drainSeconds * 1000;

const pages = [
  '--no-deprecation',
  'node_modules/next/dist/bin/next',
  'start',
  ...['-H', config.host, '-p', String(config.port)],
];
const worker = ['--no-deprecation', '--import', 'tsx', 'lib/commands/worker.ts'];

/** Starts the built pages, or with JOBS=only the worker, as a child; resolves when it and its database answer. */
export async function startApp(signal: AbortSignal): Promise<App> {
  const child = spawn(
    process.execPath,
    config.hasPages ? pages : worker,
    // The fourth channel breaks when this process dies, however it dies; the app then ends itself.
    { env: childEnvironment(), stdio: ['ignore', 'pipe', 'inherit', 'ipc'] },
  );
  let said = '';
  child.stdout?.on('data', (text: Buffer) => {
    said = (said + text).slice(-4000);
  });
  const ended = new Promise<string>((resolve) => {
    child.on('exit', (code, by) => resolve(by ?? `code ${code}`));
  });
  const stop = async () => {
    child.kill('SIGTERM');
    const kill = setTimeout(() => child.kill('SIGKILL'), patience);
    await ended;
    clearTimeout(kill);
  };
  const kill = () => void child.kill('SIGKILL');
  signal.addEventListener('abort', () => void stop());
  const late = await Promise.race([untilReady(), ended.then((how) => `It ended by itself (${how}).`)]);
  if (late) throw new Error(`The app did not start. ${late}\n${said}`.trimEnd());
  child.stdout?.pipe(process.stdout);
  return { stop, kill, ended };
}

/** A small machine that is busy with other things takes its time; one that is stuck is told of all the same. */
const MOST_MINUTES = 5;

/** Resolves once the app and its database answer, or with a sentence when they have not for too long. */
async function untilReady(): Promise<string | undefined> {
  const host = ['0.0.0.0', '::'].includes(config.host) ? '127.0.0.1' : config.host;
  const end = performance.now() + MOST_MINUTES * 60_000;
  while (performance.now() < end) {
    const answer = await fetch(`http://${host}:${config.port}/ready`).catch(() => undefined);
    if (answer?.ok) return undefined;
    await wait(50);
  }
  return `It has not answered for ${MOST_MINUTES} minutes.`;
}
