import { db } from '@/lib/db/client';
import { attemptKey } from './caller-address';
import { secondsUntil } from './limit-attempts';

const HOUR = 3600;
/** Numbers that nothing has, in an hour: of one caller, where callers can be told apart, and of everybody together. */
export const MISSES_AN_HOUR = { caller: 20, everybody: 400 };

export type SoughtAnswer<T> = { allowed: true; found: T | null } | { allowed: false; waitSeconds: number };

/**
 * Reads what a number of a job (J) or of a certificate (W) names, and counts only the numbers that nothing has.
 *
 * A number carries a check character, so a mistyped one is told apart before it is looked up; who misses again and again
 * is guessing. One statement asks whether the count is spent, looks, and counts the miss: a hit writes nothing and waits
 * for nobody. Of misses sent at once exactly as many pass as may, because each takes the count that the one before it
 * left. A spent count stops hits too, before anything is looked up, or guessing would go on; a hit that is looked up in
 * the moment in which the last misses are counted still passes, so that guesses sent at once get at most one more
 * answer for each connection to the database.
 */
export async function limitMisses<T>(o: {
  number: string;
  /** the network address, or null where it cannot be known */
  caller: string | null;
  now: Date;
  read: () => Promise<T | null>;
}): Promise<SoughtAnswer<T>> {
  const { number, caller, now } = o;
  const keys = [attemptKey('missed', 'everybody')];
  const most = [MISSES_AN_HOUR.everybody];
  if (caller) {
    keys.push(attemptKey('missed', 'caller', caller));
    most.push(MISSES_AN_HOUR.caller);
  }
  const end = new Date(now.getTime() + HOUR * 1000);
  // As in limitEach: a window that ends later was begun by a clock that has been set right since.
  const ahead = new Date(now.getTime() + 2 * HOUR * 1000);
  const [answer] = await db.$queryRaw<{ until: Date | null; isFound: boolean | null }[]>`
    WITH guard AS (SELECT * FROM unnest(${keys}::text[], ${most}::int[]) AS g("key", "most")),
    spent AS (
      SELECT max(a."resetAt") AS "until" FROM "attempt" a JOIN guard USING ("key")
      WHERE a."resetAt" > ${now} AND a."resetAt" <= ${ahead} AND a."count" >= guard."most"),
    sought AS (
      SELECT CASE WHEN "until" IS NULL THEN EXISTS (SELECT FROM "job" WHERE "number" = ${number})
        OR EXISTS (SELECT FROM "certificate" WHERE "number" = ${number}) END AS "isFound" FROM spent),
    missed AS (
      INSERT INTO "attempt" AS a ("key", "count", "resetAt")
      SELECT "key", 1, ${end} FROM guard WHERE NOT (SELECT "isFound" FROM sought) ORDER BY "key"
      ON CONFLICT ("key") DO UPDATE SET
        "count" = CASE WHEN a."resetAt" <= ${now} OR a."resetAt" > ${ahead} THEN 1 ELSE a."count" + 1 END,
        "resetAt" = CASE WHEN a."resetAt" <= ${now} OR a."resetAt" > ${ahead}
          THEN excluded."resetAt" ELSE a."resetAt" END
      RETURNING "key", "count", "resetAt")
    SELECT "isFound", COALESCE("until", (
      SELECT max(missed."resetAt") FROM missed JOIN guard USING ("key") WHERE missed."count" > guard."most"
    )) AS "until" FROM spent, sought`;
  if (!answer) throw new Error('The counter of misses returned no row');
  const { until, isFound } = answer;
  if (until) return { allowed: false, waitSeconds: secondsUntil([{ resetAt: until }], now) };
  return { allowed: true, found: isFound ? await o.read() : null };
}
