import { compareDays, type Day, dayFromDate, dayInZone, maxDay, minDay } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import type { Tx } from '@/lib/db/transaction';
import type { BenchJob } from './rules/promise';

/** Jobs older than this say little of how the workshop works today (common practice, no source). */
export const LOOK_BACK_DAYS = 400;
const WAIT_STAGES = ['awaiting-approval', 'declined', 'ready'];
/** In these it waits for its customer: for an answer, or after a no that is taken back. */
const CUSTOMER_STAGES: readonly (string | null)[] = ['awaiting-approval', 'declined'];
const DAY_MILLISECONDS = 86_400_000;

/** The instant from which jobs are looked at. */
export function lookBack(now: Date): Date {
  return new Date(now.getTime() - LOOK_BACK_DAYS * DAY_MILLISECONDS);
}

/**
 * Every job that arrived in the last four hundred days, as far as promises go, in the order of arrival. Jobs the customer declined
 * for good and claims sent back without repair are left out: a unit packed unrepaired says nothing of a repair.
 */
export async function readBenchJobs(o: { zone: string; now: Date }, client: Tx = db): Promise<BenchJob[]> {
  const rows = await client.job.findMany({
    where: {
      arrivedAt: { gte: lookBack(o.now), lte: o.now },
      stage: { notIn: ['cancelled', 'declined'] },
      // One that was contested and then repaired has both moves; one that was contested and is not ready is at the bench again.
      OR: [
        { kind: 'repair' },
        { readyAt: null },
        { events: { none: { fromStage: 'assessing', toStage: 'ready' } } },
        { events: { some: { fromStage: 'proving', toStage: 'ready' } } },
      ],
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
            waited: [
              ...waitForStart(contract, dayOf(arrivedAt), dayOf),
              ...waits(events, dayOf),
              ...readyBefore(events, dayOf),
            ],
          },
        ],
  );
}

type Contract = { termsAcceptedAt: Date | null; withdrawUntil: Date | null; startRequestedAt: Date | null };

/**
 * The days from arrival, or from the contract where that came later, in which no work might begin: to the last day to
 * withdraw, or to the day the customer asked for the start. A promise begins after them (lib/jobs/write-arrival.ts).
 */
function waitForStart(
  { termsAcceptedAt, withdrawUntil, startRequestedAt }: Contract,
  arrivedOn: Day,
  dayOf: (instant: Date) => Day,
): { from: Day; to: Day }[] {
  if (!withdrawUntil) return [];
  const last = dayFromDate(withdrawUntil);
  const from = termsAcceptedAt ? maxDay(arrivedOn, dayOf(termsAcceptedAt)) : arrivedOn;
  const to = startRequestedAt ? minDay(last, dayOf(startRequestedAt)) : last;
  return compareDays(from, to) < 0 ? [{ from, to }] : [];
}

type StageEvent = { at: Date; fromStage: string | null; toStage: string | null };

/** A no or a withdrawal that no yes came after: of the moves to `declined` and from there to the bench, the last led there. */
function isDeclinedForGood(events: readonly StageEvent[]): boolean {
  const last = events.findLast(
    ({ fromStage, toStage }) =>
      toStage === 'declined' || (fromStage === 'declined' && toStage === 'on-bench'),
  );
  return last?.toStage === 'declined';
}

/** Each entry into waiting for the customer, to the move that left it; the last may still be open. */
function waits(
  events: readonly StageEvent[],
  dayOf: (instant: Date) => Day,
): { from: Day; to: Day | null }[] {
  const found: { from: Day; to: Day | null }[] = [];
  for (const event of events) {
    const open = found.at(-1);
    if (CUSTOMER_STAGES.includes(event.fromStage) && open?.to === null) open.to = dayOf(event.at);
    if (CUSTOMER_STAGES.includes(event.toStage)) found.push({ from: dayOf(event.at), to: null });
  }
  return found;
}

/** The stretches in which a unit had stood ready before it was taken up again: it waited to be paid or posted, not for the bench. */
function readyBefore(events: readonly StageEvent[], dayOf: (instant: Date) => Day): { from: Day; to: Day }[] {
  const found: { from: Day; to: Day }[] = [];
  let since: Day | null = null;
  for (const event of events) {
    if (event.toStage === 'ready') since ??= dayOf(event.at);
    if (since === null || event.fromStage !== 'ready' || event.toStage === 'unclaimed') continue;
    if (event.toStage === 'on-bench' || event.toStage === 'assessing')
      found.push({ from: since, to: dayOf(event.at) });
    since = null;
  }
  return found;
}
