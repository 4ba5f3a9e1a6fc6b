import { dayInZone } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { readWorkshop } from '@/lib/workshop/records';
import { monthsBefore, REQUEST_MONTHS, removalProblems } from './rules/retention';
import { OVER, readRemovalFacts } from './stored-removal';
import { writeRemoval } from './write-removal';

/** So many bookings and requests a round at most, so that a round stays short; the next one goes on. */
const MOST = 50;

/**
 * Removes what has been kept long enough, by the clock: bookings whose jobs were all over so many months ago and that no
 * cover hangs on any more, requests for a price that came to nothing half a year ago, and the log's rows of who saw them.
 * A request that still waits on the workshop stays until it is answered. Returns how many bookings and requests.
 */
export async function sweepPeople(now: Date): Promise<number> {
  const { keepMonths } = await readWorkshop();
  const requests = await sweepRequests(now);
  if (keepMonths === 0) return requests;
  const before = monthsBefore(now, keepMonths);
  await db.seenBy.deleteMany({ where: { at: { lt: before } } });
  return requests + (await sweepBookings(now, before));
}

async function sweepBookings(now: Date, before: Date): Promise<number> {
  const workshop = await readWorkshop();
  const today = dayInZone(now, workshop.timeZone);
  // By what the papers say, since cover never ends before that; days given back are counted for each below.
  const due = await db.$queryRaw<{ id: string }[]>`
    select c."id" from "customer" c
    where c."erasedAt" is null and exists (select 1 from "job" j where j."customerId" = c."id")
      and not exists (
        select 1 from "job" j where j."customerId" = c."id" and (
          j."stage" <> all(${OVER})
          or coalesce(j."closedAt", (select max(e."at") from "job_event" e where e."jobId" = j."id")) >= ${before}))
      and not exists (
        select 1 from "certificate" t join "job" j on j."id" = t."jobId"
        where j."customerId" = c."id" and t."supersededAt" is null and t."endsOn" >= ${today}::date)
    order by c."createdAt" limit ${MOST}`;
  let removed = 0;
  for (const { id } of due) {
    removed += await transaction(async (tx) => {
      const rows = { customerIds: [id], quoteIds: [] };
      const facts = await readRemovalFacts(rows, { today, workshop }, tx);
      if (removalProblems(facts, false).length > 0) return 0;
      return (await writeRemoval(tx, { ...rows, actor: { kind: 'clock' }, now })).bookings;
    });
  }
  return removed;
}

async function sweepRequests(now: Date): Promise<number> {
  const before = monthsBefore(now, REQUEST_MONTHS);
  const due = await db.quoteRequest.findMany({
    where: {
      emailKey: { not: '' },
      state: { notIn: ['asked', 'quoted', 'booked'] },
      quote: { jobId: null, events: { none: { at: { gte: before } } } },
      askedAt: { lt: before },
    },
    select: { quoteId: true },
    orderBy: { askedAt: 'asc' },
    take: MOST,
  });
  let removed = 0;
  for (const { quoteId } of due) {
    removed += await transaction(async (tx) => {
      const rows = { customerIds: [], quoteIds: [quoteId] };
      return (await writeRemoval(tx, { ...rows, actor: { kind: 'clock' }, now })).requests;
    });
  }
  return removed;
}
