import { setTimeout as wait } from 'node:timers/promises';
import { config } from '@/lib/config';
import { disconnect } from '@/lib/db/client';
import { log } from '@/lib/log';
import { serving } from './serving';

/** Longest wait for open requests; the slowest answers, large PDFs on a busy machine, take a few seconds. */
const PATIENCE = 10_000;
/** Ctrl-C reaches the process from the terminal and from the launcher: within a second both are the same wish. */
const SAME_WISH = 1000;

/**
 * Ends this process when it is told to: first it is not ready any more, for DRAIN_SECONDS it goes on as before, then it
 * takes no new connections, finishes its open requests and what `finishers` have in hand, closes the database, and
 * exits with 0. A second signal ends it at once, with 1. Without the launcher at the other end of the line its database
 * may be gone, and it ends at once too.
 */
export function stopOnSignal(finishers: readonly (() => Promise<unknown>)[]): void {
  let told: number | undefined;
  for (const signal of ['SIGTERM', 'SIGINT'] as const) {
    process.on(signal, () => {
      const again = told !== undefined && performance.now() - told > SAME_WISH;
      if (again) process.exit(1);
      if (told !== undefined) return;
      told = performance.now();
      void stop(signal, finishers).then((code) => process.exit(code));
    });
  }
  if (process.connected) process.on('disconnect', () => process.exit(1));
}

async function stop(signal: string, finishers: readonly (() => Promise<unknown>)[]): Promise<number> {
  const began = performance.now();
  serving.isStopping = true;
  log.info('stopping', { signal, count: serving.open });
  if (config.drainSeconds > 0) await wait(config.drainSeconds * 1000);
  for (const server of serving.servers) server.close();
  const ended = await Promise.allSettled([requestsEnd(), ...finishers.map((finish) => finish())]);
  for (const each of ended) if (each.status === 'rejected') log.error('stop-failed', {}, each.reason);
  await disconnect();
  log.info('stopped', { ms: Math.round(performance.now() - began), count: serving.open });
  return 0;
}

async function requestsEnd(): Promise<void> {
  const end = performance.now() + PATIENCE;
  while (serving.open > 0 && performance.now() < end) {
    await wait(20);
    // What was between two requests when the server closed is idle now.
    for (const server of serving.servers) server.closeIdleConnections();
  }
}
