import { now } from '@/lib/clock';
import { config } from '@/lib/config';
import { clockRound } from './clock-round';

const HOUR = 3_600_000;
/** The first round waits until the pages are up. */
const FIRST = 60_000;

/** Starts the hourly rounds of this process, once. A clock that a test sets by hand makes no rounds of its own. */
export function startClock(): void {
  if (config.clockFile) return;
  if (Reflect.has(globalThis, started)) return;
  Reflect.set(globalThis, started, true);
  const round = () =>
    void clockRound(now()).catch((error: unknown) =>
      console.error(`clock: ${error instanceof Error ? error.name : 'unknown fault'}`),
    );
  setTimeout(round, FIRST).unref();
  setInterval(round, HOUR).unref();
}

const started = Symbol.for('mendpost.clock');
