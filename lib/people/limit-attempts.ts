import { instantDaysBefore } from '@/lib/calendar/spans';
import { db } from '@/lib/db/client';

export type AttemptLimit = { max: number; windowSeconds: number; now: Date };
export type CountedKey = { key: string; max: number; windowSeconds: number };
export type AttemptAnswer = { allowed: boolean; waitSeconds: number };

/**
 * Counts one attempt under a key and says whether it may go on; `waitSeconds` is the time until the window ends.
 *
 * One statement counts and decides, so of fifty attempts that arrive together exactly `max` pass: the row lock of the
 * upsert lines them up, and each sees the count that the one before it left. Keys hold no personal data: hash them.
 */
export async function limitAttempts(key: string, { now, ...limit }: AttemptLimit): Promise<AttemptAnswer> {
  return limitEach([{ key, ...limit }], now);
}

/**
 * Counts one attempt under several keys, no two the same, in one statement; it may go on when none of them is spent, and
 * otherwise waits for the last. Rows are locked in the order of their keys: two attempts that share some cannot lock
 * each other out.
 *
 * A window that ends later than two windows from now was begun by a clock that has been set right since: it starts
 * afresh. One window would be too strict, because two instances may differ by a moment.
 */
export async function limitEach(counted: readonly CountedKey[], now: Date): Promise<AttemptAnswer> {
  const keys = counted.map(({ key }) => key);
  const seconds = counted.map(({ windowSeconds }) => windowSeconds);
  const rows = await db.$queryRaw<{ key: string; count: number; resetAt: Date }[]>`
    INSERT INTO "attempt" AS a ("key", "count", "resetAt")
    SELECT "key", 1, ${now}::timestamptz + make_interval(secs => "seconds")
    FROM unnest(${keys}::text[], ${seconds}::int[]) AS c("key", "seconds") ORDER BY "key"
    ON CONFLICT ("key") DO UPDATE SET
      "count" = CASE WHEN a."resetAt" <= ${now} OR a."resetAt" > excluded."resetAt" + (excluded."resetAt" - ${now})
        THEN 1 ELSE a."count" + 1 END,
      "resetAt" = CASE WHEN a."resetAt" <= ${now} OR a."resetAt" > excluded."resetAt" + (excluded."resetAt" - ${now})
        THEN excluded."resetAt" ELSE a."resetAt" END
    RETURNING "key", "count", "resetAt"`;
  if (rows.length !== counted.length) throw new Error('The attempt counter did not return every row');
  const most = new Map(counted.map(({ key, max }) => [key, max]));
  const spent = rows.filter(({ key, count }) => count > (most.get(key) ?? 0));
  return { allowed: spent.length === 0, waitSeconds: secondsUntil(spent, now) };
}

/** Whole seconds until the last of some windows ends, at least one; 0 for none. */
export function secondsUntil(windows: readonly { resetAt: Date }[], now: Date): number {
  const waits = windows.map(({ resetAt }) =>
    Math.max(1, Math.ceil((resetAt.getTime() - now.getTime()) / 1000)),
  );
  return Math.max(0, ...waits);
}

/** Starts a key afresh, after the attempt that it guards succeeded. */
export async function forgetAttempts(key: string): Promise<void> {
  await db.attempt.deleteMany({ where: { key } });
}

/** Sweeps out the windows that ended a day ago, so that the table stays small; part of the hourly round. */
export async function forgetEndedWindows(now: Date): Promise<void> {
  const dayAgo = instantDaysBefore(now, 1);
  await db.attempt.deleteMany({ where: { resetAt: { lt: dayAgo } } });
}
