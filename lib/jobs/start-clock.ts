import { now } from '@/lib/clock';
import { config } from '@/lib/config';
import { log } from '@/lib/log';
import { forgetEndedWindows, limitAttempts } from '@/lib/people/limit-attempts';
import { clockRound } from './clock-round';

const HOUR = 3_600_000;
/** The first round waits until the pages are up. */
const FIRST = 60_000;
/** A little less than an hour: the timers of a process drift, and none may come just too early for ever. */
const ROUND_SECONDS = 55 * 60;

/**
 * Starts the hourly rounds of this process; `stop` begins no more and waits for the one under way. A clock that a test
 * sets by hand makes no rounds of its own.
 */
export function startClock(): { stop: () => Promise<void> } {
  let underWay: Promise<void> = Promise.resolve();
  if (config.clockFile) return { stop: () => underWay };
  const round = () => {
    underWay = roundOnce(now()).catch((error: unknown) => log.error('clock-failed', {}, error));
  };
  const first = setTimeout(round, FIRST).unref();
  const hourly = setInterval(round, HOUR).unref();
  return {
    stop() {
      clearTimeout(first);
      clearInterval(hourly);
      return underWay;
    },
  };
}

/**
 * One round of all processes on a database: whoever counts first makes it, the others leave it, for 55 minutes. Nothing
 * hangs on it but work done twice for nothing, since every step of a round is safe to run beside another.
 */
export async function roundOnce(at: Date): Promise<void> {
  const turn = await limitAttempts('clock-round', { max: 1, windowSeconds: ROUND_SECONDS, now: at });
  if (!turn.allowed) return;
  const began = performance.now();
  // A round of which a part failed must not leave the counts of attempts lying either.
  const done = await clockRound(at).finally(() => forgetEndedWindows(at));
  const count = Object.values(done).reduce((sum, each) => sum + each, 0);
  log.info('clock-round', { count, ms: Math.round(performance.now() - began) });
}
