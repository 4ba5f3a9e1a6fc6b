import { db } from '@/lib/db/client';
import { balanceOf, isPriceOpen } from './rules/balance';
import { MONEY_OF_JOB } from './stored-money';

/** A job whose customer has paid more than it comes to; `amount` in minor units, above zero. */
export type ToGiveBack = {
  jobNumber: string;
  customer: string;
  stage: string;
  currency: string;
  amount: number;
};

/**
 * Every job with money to give back, the greatest amount first; what was paid before any price was agreed is none. The database finds the jobs that took in more than was invoiced,
 * and those that took in something before any invoice; the balance itself is worked out by its one rule.
 */
export async function listToGiveBack(): Promise<ToGiveBack[]> {
  const found = await db.$queryRaw<{ id: string }[]>`
    SELECT p."jobId" AS id
    FROM (SELECT "jobId", SUM("amountMinor") AS minor FROM "payment" WHERE "purpose" = 'price' GROUP BY "jobId") p
    LEFT JOIN (
      SELECT "jobId", SUM(CASE "kind" WHEN 'invoice' THEN "payableMinor" ELSE -"payableMinor" END) AS minor
      FROM "invoice" GROUP BY "jobId"
    ) i ON i."jobId" = p."jobId"
    WHERE p.minor > COALESCE(i.minor, 0)`;
  if (found.length === 0) return [];
  const jobs = await db.job.findMany({
    where: { id: { in: found.map(({ id }) => id) } },
    select: { ...MONEY_OF_JOB, customer: { select: { name: true } } },
  });
  return jobs
    .filter((job) => !isPriceOpen(job))
    .map((job) => ({
      jobNumber: job.number,
      customer: job.customer.name,
      stage: job.stage,
      currency: job.quotes[0]?.currency ?? '',
      amount: -balanceOf(job).owed,
    }))
    .filter(({ amount }) => amount > 0)
    .sort((a, b) => b.amount - a.amount || (a.jobNumber < b.jobNumber ? -1 : 1));
}
