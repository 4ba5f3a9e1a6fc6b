import { type Day, dayInZone } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import type { Prisma } from '@/lib/db/generated/client';
import { POSTAGE_OF_CLAIM, readPostageStanding } from '@/lib/warranty/stored-postage';
import { paidBack } from '@/lib/warranty/write-closed-claim';
import { balanceOf, isPriceOpen } from './rules/balance';
import { byWaiting, OWED_BACK_KINDS, owedBackSince, owedSinceWithdrawal, refundDue } from './rules/owed-back';
import { MONEY_OF_JOB } from './stored-money';
import { keptRefunds } from './stored-refunds';

/**
 * A job whose customer has paid more than it comes to, or has asked for the postage of a covered claim, which is a row of its own;
 * `amount` in minor units, above zero.
 */
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
  isPostage: boolean;
};

/**
 * All money to give back, what is due next first; what was paid before any price was agreed is none, nor is postage that a ruling
 * does not cover.
 */
export async function listToGiveBack(timeZone: string): Promise<ToGiveBack[]> {
  return toGiveBack(await couldBeOwed(), timeZone);
}

/** The same for Today: what is new on it may come up to a minute late (`keptRefunds`). */
export async function listToGiveBackToday(timeZone: string, now: Date): Promise<ToGiveBack[]> {
  return keptRefunds.of(timeZone, now, () => listToGiveBack(timeZone));
}

/**
 * Jobs that took in more than was invoiced, those that took in something before any invoice, and those on which postage was asked
 * for. Whether that is to be given back is for the rules of the balance and of the postage to say.
 */
async function couldBeOwed(): Promise<string[]> {
  const found = await db.$queryRaw<{ id: string }[]>`
    SELECT p."jobId" AS id
    FROM (SELECT "jobId", SUM("amountMinor") AS minor FROM "payment" WHERE "purpose" = 'price' GROUP BY "jobId") p
    LEFT JOIN (
      SELECT "jobId", SUM(CASE "kind" WHEN 'invoice' THEN "payableMinor" ELSE -"payableMinor" END) AS minor
      FROM "invoice" GROUP BY "jobId"
    ) i ON i."jobId" = p."jobId"
    WHERE p.minor > COALESCE(i.minor, 0)
    UNION
    SELECT "jobId" FROM "claim" WHERE "postageState" = 'asked'`;
  return found.map(({ id }) => id);
}

const TO_GIVE_BACK = {
  ...MONEY_OF_JOB,
  bookedAt: true,
  customer: { select: { name: true } },
  claim: { select: POSTAGE_OF_CLAIM },
  events: {
    where: { OR: [{ kind: { in: [...OWED_BACK_KINDS] } }, { toStage: 'cancelled' }] },
    orderBy: { version: 'asc' },
    select: { kind: true, at: true, toStage: true, data: true },
  },
} satisfies Prisma.JobSelect;

async function toGiveBack(jobIds: readonly string[], timeZone: string): Promise<ToGiveBack[]> {
  if (jobIds.length === 0) return [];
  const jobs = await db.job.findMany({
    where: { id: { in: [...jobIds] } },
    select: TO_GIVE_BACK,
  });
  return jobs.flatMap((job) => [...overpaid(job, timeZone), ...postage(job, timeZone)]).sort(byWaiting);
}

type Row = Prisma.JobGetPayload<{ select: typeof TO_GIVE_BACK }>;

function overpaid(job: Row, timeZone: string): ToGiveBack[] {
  const amount = -balanceOf(job).owed;
  if (isPriceOpen(job) || amount <= 0) return [];
  const since = owedBackSince(job.events) ?? job.bookedAt;
  const withdrawn = owedSinceWithdrawal(job.events, amount);
  return [
    {
      ...shared(job),
      amount,
      since: dayInZone(since, timeZone),
      dueOn: refundDue(withdrawn?.heardOn ?? dayInZone(withdrawn?.at ?? since, timeZone)),
      isAfterWithdrawal: withdrawn !== null,
      isPostage: false,
    },
  ];
}

function postage(job: Row, timeZone: string): ToGiveBack[] {
  const { claim } = job;
  if (!claim?.postageAskedAt || !claim.postageMinor || readPostageStanding(claim) !== 'asked') return [];
  const since = dayInZone(claim.postageAskedAt, timeZone);
  return [
    {
      ...shared(job),
      amount: claim.postageMinor - paidBack(job),
      ...{ since, dueOn: refundDue(since), isAfterWithdrawal: false, isPostage: true },
    },
  ];
}

function shared({ number, customer, stage, quotes }: Row) {
  return { jobNumber: number, customer: customer.name, stage, currency: quotes[0]?.currency ?? '' };
}
