import { type Day, dayInZone } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { balanceOf, isPriceOpen } from './rules/balance';
import { byWaiting, OWED_BACK_KINDS, owedBackSince, owedSinceWithdrawal, refundDue } from './rules/owed-back';
import { MONEY_OF_JOB } from './stored-money';
import { keptRefunds } from './stored-refunds';

/** A job whose customer has paid more than it comes to; `amount` in minor units, above zero. */
export type ToGiveBack = {
  jobNumber: string;
  customer: string;
  stage: string;
  currency: string;
  amount: number;
  /** the day it grew last */
  since: Day;
  /** last day to give it back, as its customer was told */
  dueOn: Day;
  /** some of it has been owed since a withdrawal: the law sets that day */
  isAfterWithdrawal: boolean;
};

/**
 * Every job with money to give back, what is due next first; what was paid before any price was agreed
 * is none.
 */
export async function listToGiveBack(timeZone: string): Promise<ToGiveBack[]> {
  return toGiveBack(await overpaid(), timeZone);
}

/** The same for Today: what is new on it may come up to a minute late (`keptRefunds`). */
export async function listToGiveBackToday(timeZone: string, now: Date): Promise<ToGiveBack[]> {
  return keptRefunds.of(timeZone, now, () => listToGiveBack(timeZone));
}

/**
 * Jobs that took in more than was invoiced, and those that took in something before any invoice. Whether that is to be given
 * back is for the one rule of the balance to say.
 */
async function overpaid(): Promise<string[]> {
  const found = await db.$queryRaw<{ id: string }[]>`
    SELECT p."jobId" AS id
    FROM (SELECT "jobId", SUM("amountMinor") AS minor FROM "payment" WHERE "purpose" = 'price' GROUP BY "jobId") p
    LEFT JOIN (
      SELECT "jobId", SUM(CASE "kind" WHEN 'invoice' THEN "payableMinor" ELSE -"payableMinor" END) AS minor
      FROM "invoice" GROUP BY "jobId"
    ) i ON i."jobId" = p."jobId"
    WHERE p.minor > COALESCE(i.minor, 0)`;
  return found.map(({ id }) => id);
}

async function toGiveBack(jobIds: readonly string[], timeZone: string): Promise<ToGiveBack[]> {
  if (jobIds.length === 0) return [];
  const jobs = await db.job.findMany({
    where: { id: { in: [...jobIds] } },
    select: {
      ...MONEY_OF_JOB,
      bookedAt: true,
      customer: { select: { name: true } },
      events: {
        where: { OR: [{ kind: { in: [...OWED_BACK_KINDS] } }, { toStage: 'cancelled' }] },
        orderBy: { version: 'asc' },
        select: { kind: true, at: true, toStage: true, data: true },
      },
    },
  });
  return jobs
    .filter((job) => !isPriceOpen(job))
    .map((job) => {
      const amount = -balanceOf(job).owed;
      const since = owedBackSince(job.events) ?? job.bookedAt;
      const withdrawn = owedSinceWithdrawal(job.events, amount);
      return {
        jobNumber: job.number,
        customer: job.customer.name,
        stage: job.stage,
        currency: job.quotes[0]?.currency ?? '',
        amount,
        since: dayInZone(since, timeZone),
        dueOn: refundDue(withdrawn?.heardOn ?? dayInZone(withdrawn?.at ?? since, timeZone)),
        isAfterWithdrawal: withdrawn !== null,
      };
    })
    .filter(({ amount }) => amount > 0)
    .sort(byWaiting);
}
