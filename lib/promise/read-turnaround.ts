import { type Day, day, dayFromDate, dayInZone } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { CALLED_OFF } from '@/lib/jobs/rules/stage-sets';
import { readCalendar, type WorkshopCard } from '@/lib/workshop/records';
import { LOOK_BACK_DAYS, lookBack } from './records';
import { fairDay } from './rules/after-wait';
import { byMonth, judgedPromise, type KeptMonth } from './rules/kept';
import { type StageDays, type StayCount, stageDays, WAITING_STAGES } from './rules/turnaround';
import { TAKEN_UP_AGAIN, WAITS_ON_CUSTOMER } from './rules/waits';

export type Turnaround = { days: number; stages: StageDays[]; months: KeptMonth[] };

type TurnaroundOf = Pick<WorkshopCard, 'timeZone' | 'holidayCountry' | 'holidayRegion'>;

/** How long units stayed in each stage, and how many promises were kept in each month, over the days looked back on. */
export async function readTurnaround(now: Date, workshop: TurnaroundOf): Promise<Turnaround> {
  const [stays, months] = await Promise.all([readStays(now), readKept(now, workshop)]);
  return { days: LOOK_BACK_DAYS, stages: stageDays(stays), months };
}

/**
 * Each stay of a unit in a stage, from the event that led there to the next that led away, by tenths of a day. One pass over the
 * events of the jobs looked back on; the server gives a row for each stage and tenth, never one for each job.
 */
async function readStays(now: Date): Promise<StayCount[]> {
  return db.$queryRaw<StayCount[]>`
    WITH stay AS (
      SELECT e."toStage" AS stage, e."at" AS since,
        LEAD(e."at") OVER (PARTITION BY e."jobId" ORDER BY e."version") AS until
      FROM "job_event" e JOIN "job" j ON j."id" = e."jobId"
      WHERE j."bookedAt" >= ${lookBack(now)} AND e."toStage" IS NOT NULL
    )
    SELECT stage, ROUND(EXTRACT(EPOCH FROM GREATEST(COALESCE(until, ${now}), since) - since) / 86400, 1)::float8 AS days,
      (COUNT(*) FILTER (WHERE until IS NOT NULL))::int AS ended,
      (COUNT(*) FILTER (WHERE until IS NULL))::int AS "stillHere"
    FROM stay WHERE stage = ANY(${[...WAITING_STAGES]}) AND since <= ${now}
    GROUP BY 1, 2 ORDER BY 1, 2`;
}

/** Promises that are judged alike; `day` and `ready` are told only where waits move the day. */
type KeptRow = KeptMonth & { waits: MoveDays[] | null; day: Date | null; ready: Date | null };
type MoveDays = { from: string; to: string };

/**
 * Promises whose day has passed, by the month they fell in. A unit is judged by the last day promised to it, or by the first
 * that the workshop moved on its own account, with what later waits on the customer added to it; a move in the same moment as
 * an answer of the customer is such a wait. A unit that is not ready has not kept its promise, unless it waits for the customer's answer
 * since before its day passed: the answer moves that day. The server counts by month;
 * only promises with such later waits come one by one, since working days are counted here.
 */
async function readKept(now: Date, workshop: TurnaroundOf): Promise<KeptMonth[]> {
  const today: Day = dayInZone(now, workshop.timeZone);
  const [rows, calendar] = await Promise.all([
    keptRows(now, workshop.timeZone),
    readCalendar(workshop, today),
  ]);
  return byMonth(
    rows.flatMap(({ waits, day, ready, ...row }) => {
      if (!waits || !day) return [row];
      const on = fairDay(dayFromDate(day), waits.map(moveDays), calendar);
      return judgedPromise(on, ready && dayFromDate(ready), today) ?? [];
    }),
  );
}

const moveDays = ({ from, to }: MoveDays) => ({ from: day(from), to: day(to) });

async function keptRows(now: Date, zone: string): Promise<KeptRow[]> {
  const today: Day = dayInZone(now, zone);
  return db.$queryRaw<KeptRow[]>`
    WITH move AS (
      SELECT e."jobId", e."version", (e."data"->>'from')::date AS "from", (e."data"->>'to')::date AS "to", EXISTS (
        SELECT 1 FROM "job_event" m
        WHERE m."jobId" = e."jobId" AND m."at" = e."at" AND (m."fromStage" = ANY(${[...WAITS_ON_CUSTOMER]})
          OR m."fromStage" = 'ready' AND m."toStage" = ANY(${[...TAKEN_UP_AGAIN]}))) AS "isWait"
      FROM "job_event" e
      WHERE e."kind" = 'promise-moved' AND e."data"->>'from' IS NOT NULL
    ),
    own AS (SELECT DISTINCT ON ("jobId") * FROM move WHERE NOT "isWait" ORDER BY "jobId", "version"),
    waited AS (
      SELECT m."jobId", JSONB_AGG(JSONB_BUILD_OBJECT('from', m."from", 'to', m."to") ORDER BY m."version") AS waits
      FROM own o JOIN move m ON m."jobId" = o."jobId" AND m."version" > o."version" AND m."isWait" GROUP BY 1
    ),
    promise AS (
      SELECT COALESCE(o."from", j."promisedOn") AS day, (j."readyAt" AT TIME ZONE ${zone})::date AS ready, w.waits,
        CASE WHEN j."stage" = 'awaiting-approval' THEN (
          SELECT (MAX(e."at") AT TIME ZONE ${zone})::date FROM "job_event" e
          WHERE e."jobId" = j."id" AND e."toStage" = 'awaiting-approval') END AS asked
      FROM "job" j LEFT JOIN own o ON o."jobId" = j."id" LEFT JOIN waited w ON w."jobId" = j."id"
      WHERE j."arrivedAt" >= ${lookBack(now)} AND j."promisedOn" IS NOT NULL
        AND j."stage" <> ALL(${[...CALLED_OFF]})
        AND NOT EXISTS (SELECT 1 FROM "job_event" d WHERE d."jobId" = j."id" AND d."toStage" = 'declined' AND NOT EXISTS (
          SELECT 1 FROM "job_event" y WHERE y."jobId" = j."id" AND y."version" > d."version"
            AND y."fromStage" = 'declined' AND y."toStage" = 'on-bench'))
    )
    SELECT TO_CHAR(day, 'YYYY-MM') AS month, COUNT(*)::int AS promises,
      (COUNT(*) FILTER (WHERE ready <= day))::int AS kept, (COUNT(*) FILTER (WHERE ready IS NULL))::int AS "notReady",
      waits, CASE WHEN waits IS NULL THEN NULL ELSE day END AS day, CASE WHEN waits IS NULL THEN NULL ELSE ready END AS ready
    FROM promise WHERE day < ${today}::date AND (asked IS NULL OR asked > day) GROUP BY 1, 5, 6, 7`;
}
