import { createHash, createHmac } from 'node:crypto';
import { authSecret } from '@/lib/config';
import { db } from '@/lib/db/client';
import { newestFirst } from '@/lib/db/in-order';
import type { Tx } from '@/lib/db/transaction';
import { emailKey } from '@/lib/quotes/rules/request-answers';

export type SeenWhat = 'opened' | 'exported' | 'erased' | 'corrected';

export type Seen = {
  userId: string;
  what: SeenWhat;
  email: string;
  now: Date;
  jobId?: string;
  quoteId?: string;
};

const HOUR = 3_600_000;

/**
 * A person in the log: a keyed hash of the e-mail address, so that the log names nobody to whoever reads the database
 * without the app's secret. Empty for a person whose address was removed.
 */
export function subjectOf(email: string): string {
  const key = emailKey(email);
  return key === ''
    ? ''
    : createHmac('sha256', authSecret()).update(`seen:${key}`).digest('hex').slice(0, 32);
}

/**
 * Keeps that a member of staff saw or handed out somebody's data: one row for each member, job or quote, and hour, however often
 * the page is loaded. The row's id is worked out from these, so that the primary key decides.
 */
export async function noteSeen(seen: Seen, client: Tx = db): Promise<void> {
  const { userId, what, now } = seen;
  const jobId = seen.jobId ?? null;
  const quoteId = seen.quoteId ?? null;
  const subject = subjectOf(seen.email);
  const hour = Math.floor(now.getTime() / HOUR);
  const id = createHash('sha256')
    .update(JSON.stringify([userId, what, jobId, quoteId, subject, hour]))
    .digest('hex')
    .slice(0, 40);
  await client.seenBy.createMany({
    data: [{ id, at: now, userId, what, jobId, quoteId, subject }],
    skipDuplicates: true,
  });
}

export type SeenRow = { id: string; at: Date; userId: string; what: string; number: string | null };

/**
 * Keeps that everything of a person was handed out or removed: on each of their jobs and requests, so that it can still be
 * found there when the address is gone.
 */
export async function noteSeenWhole(
  seen: Omit<Seen, 'jobId' | 'quoteId'>,
  rows: { customerIds: readonly string[]; quoteIds: readonly string[] },
  client: Tx = db,
): Promise<void> {
  const jobs = await client.job.findMany({
    where: { customerId: { in: [...rows.customerIds] } },
    select: { id: true },
  });
  for (const { id } of jobs) await noteSeen({ ...seen, jobId: id }, client);
  for (const quoteId of rows.quoteIds) await noteSeen({ ...seen, quoteId }, client);
}

/** Who saw what of a person, the newest first; at most `take`. Jobs and requests are looked at too, for an address since removed. */
export async function listSeen(o: {
  email: string;
  jobIds: readonly string[];
  quoteIds: readonly string[];
  take: number;
}): Promise<SeenRow[]> {
  const subject = subjectOf(o.email);
  const rows = await db.seenBy.findMany({
    where: {
      OR: [
        ...(subject === '' ? [] : [{ subject }]),
        { jobId: { in: [...o.jobIds] } },
        { quoteId: { in: [...o.quoteIds] } },
      ],
    },
    orderBy: newestFirst,
    take: o.take,
    select: {
      id: true,
      at: true,
      userId: true,
      what: true,
      job: { select: { number: true } },
      quote: { select: { number: true } },
    },
  });
  return rows.map(({ job, quote, ...row }) => ({ ...row, number: job?.number ?? quote?.number ?? null }));
}
