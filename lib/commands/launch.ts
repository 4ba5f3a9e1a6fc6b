import { createServer } from 'node:net';
import { config } from '@/lib/config';
import { disconnect } from '@/lib/db/client';
import { takeLock } from '@/lib/db/lock';
import { startApp } from './app-process';
import { build, isBuilt } from './build';
import { generateClient } from './generate-client';
import { prepareData } from './prepare-data';

/**
 * Starts the app and stays until it is told to stop. What was opened is closed in reverse: the app first, which lets
 * its message in hand and open requests finish, then the database, then the lock of the folder.
 */
export async function launch(): Promise<void> {
  const began = performance.now();
  const stopping = new AbortController();
  const closers: (() => Promise<unknown>)[] = [];
  let closing: Promise<void> | undefined;
  const close = () => (closing ??= closeAll(closers));
  let kill = () => {};
  let told: number | undefined;
  for (const signal of ['SIGTERM', 'SIGINT', 'SIGHUP'] as const) {
    process.on(signal, () => {
      // npm hands a Ctrl-C on that the terminal has already sent: only a later signal is a second wish, to end at once.
      if (told !== undefined && performance.now() - told > 1000) kill();
      told ??= performance.now();
      stopping.abort();
      void close().then(() => process.exit(0));
    });
  }

  try {
    await prepare();
  } catch (error) {
    // Told to stop while still preparing: what fails now fails because of that.
    if (stopping.signal.aborted) await new Promise(() => {});
    await close();
    throw error;
  }

  async function prepare() {
    if (config.isEmbedded) closers.push(await lockFolder());
    await refuseTakenPort();
    generateClient();
    if (config.hasPages && !isBuilt()) {
      console.log('Building the pages, about half a minute; later starts skip this.');
      await build(stopping.signal);
    }
    if (config.isEmbedded) {
      const { startEmbedded } = await import('@/lib/db/embedded');
      const database = await startEmbedded(config.dataDir);
      closers.push(database.stop);
    }
    closers.push(disconnect);
    const signIn = await prepareData();
    await disconnect();
    const app = await startApp(stopping.signal);
    closers.push(app.stop);
    kill = app.kill;
    void app.ended.then(async (how) => {
      if (stopping.signal.aborted) return;
      console.error(`The app ended by itself (${how}).`);
      await close();
      process.exit(1);
    });
    announce(Math.round(performance.now() - began) / 1000, signIn);
  }
}

async function closeAll(closers: (() => Promise<unknown>)[]): Promise<void> {
  for (let next = closers.pop(); next; next = closers.pop()) {
    await next().catch((error: unknown) => console.error(error instanceof Error ? error.message : error));
  }
}

async function lockFolder(): Promise<() => Promise<void>> {
  const lock = await takeLock(config.dataDir, config.appUrl);
  if (lock.taken) return lock.release;
  const who = lock.holder ? ` by process ${lock.holder.pid}, at ${lock.holder.url}` : '';
  throw new Error(`Already running on ${config.dataDir}${who}. That one was left alone; this start ends.`);
}

function refuseTakenPort(): Promise<void> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', () =>
      reject(
        new Error(`Port ${config.port} on ${config.host} is taken. Choose another: PORT=3100 npm start`),
      ),
    );
    probe.listen(config.port, config.host, () => probe.close(() => resolve()));
  });
}

function announce(seconds: number, signIn: string | undefined): void {
  const { appUrl } = config;
  if (!config.hasPages) {
    // Of several that start together the worker may be the one that made the first owner.
    console.log(
      `The worker is running, ready after ${seconds.toFixed(1)} s, without pages.${signIn ? `\n${signIn}` : ''}`,
    );
    return;
  }
  console.log(`
Mendpost is running, ready after ${seconds.toFixed(1)} s. Stop it with Ctrl-C.

  Price list     ${appUrl}/prices
  Track a job    ${appUrl}/track
  Workshop       ${appUrl}/workshop${signIn ? `\n                 ${signIn}` : ''}
`);
}
