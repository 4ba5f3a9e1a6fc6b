import { compareDays, type Day, day, dayFromDate, dayInZone } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import type { Tx } from '@/lib/db/transaction';
import { rememberFor } from '@/lib/remembered';
import { readCalendar, type WorkshopCard } from '@/lib/workshop/records';
import { IS_PACKED_UNREPAIRED, lookBack } from './records';
import { fairDay } from './rules/after-wait';
import { byMonth, judgedPromise, type KeptMonth, type KeptTally, keptTally } from './rules/kept';
import { TAKEN_UP_AGAIN, WAITS_ON_CUSTOMER } from './rules/waits';

type KeptOf = Pick<WorkshopCard, 'timeZone' | 'holidayCountry' | 'holidayRegion'>;

const tallies = rememberFor<KeptTally | null>(300_000);

/**
 * How many of the promises of the days looked back on were kept, for whoever is told a new one; null where there were too few to say.
 * Kept for five minutes by each process, as the days promised on the price list are.
 */
export async function keptPromises(now: Date, workshop: KeptOf): Promise<KeptTally | null> {
  return tallies.of(dayInZone(now, workshop.timeZone), now, async () =>
    keptTally(await readKept(now, workshop)),
  );
}

/** The same read anew inside a transaction. */
export async function keptPromisesIn(tx: Tx, now: Date, workshop: KeptOf): Promise<KeptTally | null> {
  return keptTally(await readKept(now, workshop, tx));
}

/** Promises that are judged alike; `day`, `ready` and `stopped` are told only where waits move the day. */
type KeptRow = KeptMonth & {
  waits: MoveDays[] | null;
  day: Date | null;
  ready: Date | null;
  stopped: Date | null;
};
type MoveDays = { from: string; to: string };

/**
 * Promises whose day has passed, by the month they fell in. A unit is judged by the last day promised to it, or by the first
 * that the workshop moved on its own account, with what later waits on the customer added to it; a move in the same moment as
 * an answer of the customer is such a wait. A unit that is not ready has not kept its promise, unless it waits for the customer's answer
 * since before its day passed: the answer moves that day. The server counts by month;
 * only promises with such later waits come one by one, since working days are counted here. What was promised of a unit that was
 * taken in by mistake counts no more, nor what was promised of a claim that goes back unrepaired, or before its day was given anew.
 *
 * Where a repair was stopped for good on or before its day, by a no, a withdrawal or the workshop, nothing was left to keep; after its
 * day the promise had not been kept. A unit that waited for the answer stopped when its customer was asked.
 */
export async function readKept(now: Date, workshop: KeptOf, client: Tx = db): Promise<KeptMonth[]> {
  const today: Day = dayInZone(now, workshop.timeZone);
  const [rows, calendar] = await Promise.all([
    keptRows(now, workshop.timeZone, client),
    readCalendar(workshop, today, client),
  ]);
  return byMonth(
    rows.flatMap(({ waits, day, ready, stopped, ...row }) => {
      if (!waits || !day) return [row];
      const on = fairDay(dayFromDate(day), waits.map(moveDays), calendar);
      if (stopped && compareDays(dayFromDate(stopped), on) <= 0) return [];
      const done = stopped ?? ready;
      return judgedPromise(on, done && dayFromDate(done), today) ?? [];
    }),
  );
}

const moveDays = ({ from, to }: MoveDays) => ({ from: day(from), to: day(to) });

async function keptRows(now: Date, zone: string, client: Tx): Promise<KeptRow[]> {
  const today: Day = dayInZone(now, zone);
  return client.$queryRaw<KeptRow[]>`
    WITH move AS (
      SELECT e."jobId", e."version", (e."data"->>'from')::date AS "from", (e."data"->>'to')::date AS "to", EXISTS (
        SELECT 1 FROM "job_event" m
        WHERE m."jobId" = e."jobId" AND m."at" = e."at" AND (m."kind" = 'offer-decided' OR m."fromStage" = ANY(${[...WAITS_ON_CUSTOMER]})
          OR m."fromStage" = 'ready' AND m."toStage" = ANY(${[...TAKEN_UP_AGAIN]}))) AS "isWait"
      FROM "job_event" e JOIN "job" a ON a."id" = e."jobId" AND e."at" >= a."arrivedAt"
      WHERE e."kind" = 'promise-moved' AND e."data"->>'from' IS NOT NULL
        AND NOT EXISTS (
          SELECT 1 FROM "job_event" f WHERE f."jobId" = e."jobId" AND f."version" > e."version"
            AND f."kind" = 'promise-moved' AND f."data"->>'from' IS NULL)
    ),
    own AS (SELECT DISTINCT ON ("jobId") * FROM move WHERE NOT "isWait" ORDER BY "jobId", "version"),
    waited AS (
      SELECT m."jobId", JSONB_AGG(JSONB_BUILD_OBJECT('from', m."from", 'to', m."to") ORDER BY m."version") AS waits
      FROM own o JOIN move m ON m."jobId" = o."jobId" AND m."version" > o."version" AND m."isWait" GROUP BY 1
    ),
    stop AS (
      SELECT DISTINCT ON (d."jobId") d."jobId", (COALESCE(CASE WHEN d."fromStage" = 'awaiting-approval' OR d."kind" = 'offer-decided' THEN (
        SELECT MAX(a."at") FROM "job_event" a
        WHERE a."jobId" = d."jobId" AND a."version" < d."version" AND a."toStage" = 'awaiting-approval') END, d."at")
        AT TIME ZONE ${zone})::date AS stopped
      FROM "job_event" d WHERE d."toStage" = 'declined' AND NOT EXISTS (
        SELECT 1 FROM "job_event" y WHERE y."jobId" = d."jobId" AND y."version" > d."version"
          AND y."fromStage" = 'declined' AND y."toStage" = 'on-bench')
      ORDER BY d."jobId", d."version" DESC
    ),
    promise AS (
      SELECT COALESCE(o."from", j."promisedOn") AS day, (j."readyAt" AT TIME ZONE ${zone})::date AS ready, s.stopped, w.waits,
        CASE WHEN j."stage" = 'awaiting-approval' THEN (
          SELECT (MAX(e."at") AT TIME ZONE ${zone})::date FROM "job_event" e
          WHERE e."jobId" = j."id" AND e."toStage" = 'awaiting-approval') END AS asked
      FROM "job" j LEFT JOIN own o ON o."jobId" = j."id" LEFT JOIN waited w ON w."jobId" = j."id"
        LEFT JOIN stop s ON s."jobId" = j."id"
      WHERE j."arrivedAt" >= ${lookBack(now)} AND j."promisedOn" IS NOT NULL
        AND j."stage" <> 'cancelled' AND NOT ${IS_PACKED_UNREPAIRED}
    )
    SELECT TO_CHAR(day, 'YYYY-MM') AS month, COUNT(*)::int AS promises,
      (COUNT(*) FILTER (WHERE ready <= day AND stopped IS NULL))::int AS kept,
      (COUNT(*) FILTER (WHERE ready IS NULL AND stopped IS NULL))::int AS "notReady", waits,
      CASE WHEN waits IS NULL THEN NULL ELSE day END AS day, CASE WHEN waits IS NULL THEN NULL ELSE ready END AS ready,
      CASE WHEN waits IS NULL THEN NULL ELSE stopped END AS stopped
    FROM promise
    WHERE day < ${today}::date AND (asked IS NULL OR asked > day) AND (stopped IS NULL OR stopped > day)
    GROUP BY 1, 5, 6, 7, 8`;
}
