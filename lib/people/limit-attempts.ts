import { db } from '@/lib/db/client';

export type AttemptLimit = { max: number; windowSeconds: number; now: Date };
export type AttemptAnswer = { allowed: boolean; waitSeconds: number };

/**
 * Counts one attempt under a key and says whether it may go on; `waitSeconds` is the time until the window ends.
 *
 * One statement counts and decides, so of fifty attempts that arrive together exactly `max` pass: the row lock of the
 * upsert lines them up, and each sees the count that the one before it left. Keys hold no personal data: hash them.
 */
export async function limitAttempts(key: string, limit: AttemptLimit): Promise<AttemptAnswer> {
  const { max, windowSeconds, now } = limit;
  const resetAt = new Date(now.getTime() + windowSeconds * 1000);
  const [row] = await db.$queryRaw<{ count: number; resetAt: Date }[]>`
    INSERT INTO "attempt" AS a ("key", "count", "resetAt") VALUES (${key}, 1, ${resetAt})
    ON CONFLICT ("key") DO UPDATE SET
      "count" = CASE WHEN a."resetAt" <= ${now} THEN 1 ELSE a."count" + 1 END,
      "resetAt" = CASE WHEN a."resetAt" <= ${now} THEN excluded."resetAt" ELSE a."resetAt" END
    RETURNING "count", "resetAt"`;
  if (!row) throw new Error('The attempt counter returned no row');
  if (row.count === 1) await forgetEndedWindows(now);
  const waitSeconds = Math.max(1, Math.ceil((row.resetAt.getTime() - now.getTime()) / 1000));
  return row.count <= max ? { allowed: true, waitSeconds: 0 } : { allowed: false, waitSeconds };
}

/** Starts a key afresh, after the attempt that it guards succeeded. */
export async function forgetAttempts(key: string): Promise<void> {
  await db.attempt.deleteMany({ where: { key } });
}

/** Takes one attempt back that turned out to be none. */
export async function giveBackAttempt(key: string): Promise<void> {
  await db.attempt.updateMany({ where: { key, count: { gt: 0 } }, data: { count: { decrement: 1 } } });
}

// Whoever opens a window sweeps out those that ended a day ago, so the table stays small without a timed job.
async function forgetEndedWindows(now: Date): Promise<void> {
  const dayAgo = new Date(now.getTime() - 86_400_000);
  await db.attempt.deleteMany({ where: { resetAt: { lt: dayAgo } } });
}
