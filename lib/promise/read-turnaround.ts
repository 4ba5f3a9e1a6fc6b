import { type Day, dayInZone } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { LOOK_BACK_DAYS, lookBack } from './records';
import { type StageDays, type StayCount, stageDays, WAITING_STAGES } from './rules/turnaround';

export type KeptMonth = { month: string; promises: number; kept: number; notReady: number };

export type Turnaround = { days: number; stages: StageDays[]; months: KeptMonth[] };

/** How long units stayed in each stage, and how many promises were kept in each month, over the days looked back on. */
export async function readTurnaround(now: Date, zone: string): Promise<Turnaround> {
  const [stays, months] = await Promise.all([readStays(now), readKept(now, zone)]);
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

/**
 * Promises whose day has passed, by the month they fell in. A unit is judged by the last day promised to it, or by the first
 * that the workshop moved on its own account; a move in the same moment as an answer of the customer is none of those.
 * A unit that is not ready has not kept its promise.
 */
async function readKept(now: Date, zone: string): Promise<KeptMonth[]> {
  const today: Day = dayInZone(now, zone);
  return db.$queryRaw<KeptMonth[]>`
    WITH moved AS (
      SELECT DISTINCT ON (e."jobId") e."jobId", (e."data"->>'from')::date AS "from"
      FROM "job_event" e
      WHERE e."kind" = 'promise-moved' AND e."data"->>'from' IS NOT NULL AND NOT EXISTS (
        SELECT 1 FROM "job_event" m
        WHERE m."jobId" = e."jobId" AND m."at" = e."at" AND m."fromStage" = 'awaiting-approval')
      ORDER BY e."jobId", e."version"
    ),
    promise AS (
      SELECT COALESCE(m."from", j."promisedOn") AS day, (j."readyAt" AT TIME ZONE ${zone})::date AS ready
      FROM "job" j LEFT JOIN moved m ON m."jobId" = j."id"
      WHERE j."arrivedAt" >= ${lookBack(now)} AND j."promisedOn" IS NOT NULL AND j."stage" NOT IN ('cancelled', 'declined')
        AND NOT EXISTS (SELECT 1 FROM "job_event" d WHERE d."jobId" = j."id" AND d."toStage" = 'declined')
    )
    SELECT TO_CHAR(day, 'YYYY-MM') AS month, COUNT(*)::int AS promises,
      (COUNT(*) FILTER (WHERE ready <= day))::int AS kept, (COUNT(*) FILTER (WHERE ready IS NULL))::int AS "notReady"
    FROM promise WHERE day < ${today}::date GROUP BY 1 ORDER BY 1`;
}
