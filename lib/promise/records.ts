import { type Day, dayInZone } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import type { Tx } from '@/lib/db/transaction';
import type { BenchJob } from './rules/promise';

/** Jobs older than this say little of how the workshop works today (common practice, no source). */
export const LOOK_BACK_DAYS = 400;
const DAY_MILLISECONDS = 86_400_000;

/** The instant from which jobs are looked at. */
export function lookBack(now: Date): Date {
  return new Date(now.getTime() - LOOK_BACK_DAYS * DAY_MILLISECONDS);
}

/**
 * Every job that arrived in the last four hundred days, as far as promises go, in the order of arrival. Jobs the customer declined are
 * left out: a unit packed unrepaired says nothing of a repair.
 */
export async function readBenchJobs(o: { zone: string; now: Date }, client: Tx = db): Promise<BenchJob[]> {
  const rows = await client.job.findMany({
    where: {
      arrivedAt: { gte: lookBack(o.now), lte: o.now },
      stage: { notIn: ['cancelled', 'declined'] },
      events: { none: { toStage: 'declined' } },
    },
    orderBy: { arrivedAt: 'asc' },
    select: {
      repairId: true,
      arrivedAt: true,
      readyAt: true,
      model: { select: { familyId: true } },
      repair: { select: { minutes: true, workingDays: true } },
      events: {
        where: { OR: [{ toStage: 'awaiting-approval' }, { fromStage: 'awaiting-approval' }] },
        orderBy: { version: 'asc' },
        select: { at: true, toStage: true },
      },
    },
  });
  const dayOf = (instant: Date) => dayInZone(instant, o.zone);
  return rows.flatMap(({ arrivedAt, readyAt, repairId, model, repair, events }) =>
    arrivedAt === null
      ? []
      : [
          {
            repairId,
            familyId: model.familyId,
            minutes: repair.minutes,
            statedDays: repair.workingDays,
            arrivedOn: dayOf(arrivedAt),
            readyOn: readyAt === null ? null : dayOf(readyAt),
            waited: waits(events, dayOf),
          },
        ],
  );
}

/** Each entry into waiting for approval, to the move that left it; the last may still be open. */
function waits(
  events: readonly { at: Date; toStage: string | null }[],
  dayOf: (instant: Date) => Day,
): { from: Day; to: Day | null }[] {
  const found: { from: Day; to: Day | null }[] = [];
  for (const event of events) {
    if (event.toStage === 'awaiting-approval') found.push({ from: dayOf(event.at), to: null });
    else {
      const open = found.at(-1);
      if (open && open.to === null) open.to = dayOf(event.at);
    }
  }
  return found;
}
