import { dayInZone } from '@/lib/calendar/day';
import { instantDaysBefore } from '@/lib/calendar/spans';
import { db } from '@/lib/db/client';
import { Prisma } from '@/lib/db/generated/client';
import type { Tx } from '@/lib/db/transaction';
import { CALLED_OFF } from '@/lib/jobs/rules/stage-sets';
import type { BenchJob } from './rules/promise';
import { isDeclinedForGood, WAIT_STAGES, waitsOf } from './rules/waits';

/** Jobs older than this say little of how the workshop works today (common practice, no source). */
export const LOOK_BACK_DAYS = 400;

/** The instant from which jobs are looked at. */
export function lookBack(now: Date): Date {
  return instantDaysBefore(now, LOOK_BACK_DAYS);
}

/**
 * A claim that goes back without repair: it was promised a day only for the case that it is covered. One that was contested and then
 * repaired has both moves; one that was contested and is not ready is at the bench again.
 */
const PACKED_UNREPAIRED: Prisma.JobWhereInput = {
  kind: 'claim',
  readyAt: { not: null },
  events: {
    some: { fromStage: 'assessing', toStage: 'ready' },
    none: { fromStage: 'proving', toStage: 'ready' },
  },
};

/** The same of the row `j` of `job`, for the server's own counts. */
export const IS_PACKED_UNREPAIRED = Prisma.sql`(j."kind" = 'claim' AND j."readyAt" IS NOT NULL
  AND EXISTS (SELECT 1 FROM "job_event" u WHERE u."jobId" = j."id" AND u."fromStage" = 'assessing' AND u."toStage" = 'ready')
  AND NOT EXISTS (SELECT 1 FROM "job_event" r WHERE r."jobId" = j."id" AND r."fromStage" = 'proving' AND r."toStage" = 'ready'))`;

/**
 * Every job that arrived in the last four hundred days, as far as promises go, in the order of arrival. Jobs the customer declined
 * for good and claims sent back without repair are left out: a unit packed unrepaired says nothing of a repair.
 */
export async function readBenchJobs(o: { zone: string; now: Date }, client: Tx = db): Promise<BenchJob[]> {
  const rows = await client.job.findMany({
    where: {
      arrivedAt: { gte: lookBack(o.now), lte: o.now },
      stage: { notIn: [...CALLED_OFF] },
      NOT: PACKED_UNREPAIRED,
    },
    orderBy: { arrivedAt: 'asc' },
    select: {
      repairId: true,
      arrivedAt: true,
      readyAt: true,
      termsAcceptedAt: true,
      withdrawUntil: true,
      startRequestedAt: true,
      model: { select: { familyId: true } },
      repair: { select: { minutes: true, workingDays: true } },
      events: {
        where: { OR: WAIT_STAGES.flatMap((stage) => [{ toStage: stage }, { fromStage: stage }]) },
        orderBy: { version: 'asc' },
        select: { at: true, fromStage: true, toStage: true },
      },
    },
  });
  const dayOf = (instant: Date) => dayInZone(instant, o.zone);
  return rows.flatMap(({ arrivedAt, readyAt, repairId, model, repair, events, ...contract }) =>
    arrivedAt === null || isDeclinedForGood(events)
      ? []
      : [
          {
            repairId,
            familyId: model.familyId,
            minutes: repair.minutes,
            statedDays: repair.workingDays,
            arrivedOn: dayOf(arrivedAt),
            readyOn: readyAt === null ? null : dayOf(readyAt),
            waited: waitsOf({ contract, events, arrivedOn: dayOf(arrivedAt) }, dayOf),
          },
        ],
  );
}
