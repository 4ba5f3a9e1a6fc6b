import { dayInZone } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { FINAL_STAGES } from '@/lib/jobs/rules/stages';
import { readWorkshop } from '@/lib/workshop/records';
import { KEPT_REQUESTS, monthsBefore, REQUEST_MONTHS, removalProblems } from './rules/retention';
import { readRemovalFacts } from './stored-removal';
import { writeRemoval } from './write-removal';

/** So many bookings and requests a round at most, so that a round stays short; the next one goes on. */
const MOST = 50;

/**
 * Removes what has been kept long enough, by the clock: bookings whose jobs were all over so many months ago and that no
 * cover hangs on any more, requests for a price that came to nothing half a year ago, and the log's rows of who saw them.
 * A request that still waits on the workshop stays until it is answered. Returns how many bookings and requests.
 *
 * One that cannot be removed, since its photo cannot be deleted just now, keeps none of the others; the round fails once all were
 * tried.
 */
export async function sweepPeople(now: Date): Promise<number> {
  const { keepMonths } = await readWorkshop();
  const due = (await requestsDue(now)).map((quoteId) => () => removeRequest(quoteId, now));
  if (keepMonths > 0) {
    const before = monthsBefore(now, keepMonths);
    await db.seenBy.deleteMany({ where: { at: { lt: before } } });
    due.push(...(await bookingsDue(now, before)).map((id) => () => removeBooking(id, now)));
  }
  let removed = 0;
  const faults: unknown[] = [];
  for (const remove of due) {
    try {
      removed += await remove();
    } catch (error) {
      faults.push(error);
    }
  }
  if (faults.length > 0) throw new AggregateError(faults, 'some people could not be removed');
  return removed;
}

/**
 * Bookings whose jobs were all over before an instant, their parcels looked for no more, and that no cover hangs on by what the papers in force under their
 * certificates' numbers say, nor a claim that is open on one of those (stored-removal.ts).
 */
async function bookingsDue(now: Date, before: Date): Promise<string[]> {
  const today = dayInZone(now, (await readWorkshop()).timeZone);
  // Cover never ends before its paper says so; days given back since are counted for each when it is removed.
  const due = await db.$queryRaw<{ id: string }[]>`
    select c."id" from "customer" c
    where c."erasedAt" is null and exists (select 1 from "job" j where j."customerId" = c."id")
      and not exists (
        select 1 from "job" j where j."customerId" = c."id" and (
          j."stage" <> all(${[...FINAL_STAGES]}) or j."soughtSince" is not null
          or coalesce(j."closedAt", (select max(e."at") from "job_event" e where e."jobId" = j."id")) >= ${before}))
      and not exists (
        select 1 from "job" j
        join (
          select "jobId", "number" from "certificate" union select "jobId", "certificateNumber" from "claim"
        ) under on under."jobId" = j."id"
        where j."customerId" = c."id" and (
          exists (
            select 1 from "certificate" t
            where t."number" = under."number" and t."supersededAt" is null and t."endsOn" >= ${today}::date)
          or exists (
            select 1 from "claim" o where o."certificateNumber" = under."number" and o."state" <> 'closed')))
    order by c."createdAt" limit ${MOST}`;
  return due.map(({ id }) => id);
}

async function removeBooking(id: string, now: Date): Promise<number> {
  return transaction(async (tx) => {
    const workshop = await readWorkshop(tx);
    const today = dayInZone(now, workshop.timeZone);
    const rows = { customerIds: [id], quoteIds: [] };
    const facts = await readRemovalFacts(rows, { today, workshop }, tx);
    if (removalProblems(facts, false).length > 0) return 0;
    return (await writeRemoval(tx, { ...rows, actor: { kind: 'clock' }, now })).bookings;
  });
}

async function requestsDue(now: Date): Promise<string[]> {
  const before = monthsBefore(now, REQUEST_MONTHS);
  const due = await db.quoteRequest.findMany({
    where: {
      emailKey: { not: '' },
      state: { notIn: [...KEPT_REQUESTS] },
      quote: { jobId: null, events: { none: { at: { gte: before } } } },
      askedAt: { lt: before },
    },
    select: { quoteId: true },
    orderBy: { askedAt: 'asc' },
    take: MOST,
  });
  return due.map(({ quoteId }) => quoteId);
}

async function removeRequest(quoteId: string, now: Date): Promise<number> {
  return transaction(async (tx) => {
    const rows = { customerIds: [], quoteIds: [quoteId] };
    return (await writeRemoval(tx, { ...rows, actor: { kind: 'clock' }, now })).requests;
  });
}
