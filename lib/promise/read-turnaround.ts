import { db } from '@/lib/db/client';
import type { WorkshopCard } from '@/lib/workshop/records';
import { LOOK_BACK_DAYS, lookBack } from './records';
import type { KeptMonth } from './rules/kept';
import { type StageDays, type StayCount, stageDays, WAITING_STAGES } from './rules/turnaround';
import { readKept } from './stored-kept';

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
