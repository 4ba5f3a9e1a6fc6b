import { instantDaysBefore } from '@/lib/calendar/spans';
import { db } from '@/lib/db/client';
import type { Prisma } from '@/lib/db/generated/client';
import { readCarrierRows } from '@/lib/parcels/records';
import { transitTo } from '@/lib/parcels/rules/carriers';
import { readWorkshop } from '@/lib/workshop/records';
import { closesAfter, LEAST_DAYS } from './rules/closing';

/** So many jobs a round at most, so that a round stays short; the next one goes on. */
const MOST = 200;

/** Sent back so long ago that it may count as delivered. */
export function isLongSentBack(now: Date) {
  return { stage: 'sent-back', sentBackAt: { lte: instantDaysBefore(now, LEAST_DAYS) } };
}

/** What of a job says whether its customer has written since it was sent back. */
export const WRITTEN_SINCE = {
  sentBackAt: true,
  messages: { where: { author: 'customer' }, select: { at: true, settledHow: true } },
} satisfies Prisma.JobSelect;

/**
 * Whether its customer has written since. A parcel that somebody reports missing did not come, and only a person can read which it
 * is: words that a person read and called in need of no answer report nothing.
 */
export function isWrittenAbout({
  sentBackAt,
  messages,
}: Prisma.JobGetPayload<{ select: typeof WRITTEN_SINCE }>): boolean {
  return messages.some(
    ({ at, settledHow }) => sentBackAt !== null && at > sentBackAt && settledHow !== 'no-answer-needed',
  );
}

/** Jobs that the clock closes, the oldest first: sent back long ago, their parcel is not looked for, and their customer has not written since (`isWrittenAbout`). */
export async function longSentBack(now: Date): Promise<{ id: string; version: number; days: number }[]> {
  const { sentBackAt } = isLongSentBack(now);
  const rows = await db.$queryRaw<Sent[]>`
    SELECT j."id", j."version", j."sentBackAt", j."carrier", c."country" AS "to"
    FROM "job" j JOIN "customer" c ON c."id" = j."customerId"
    WHERE j."stage" = 'sent-back' AND j."sentBackAt" <= ${sentBackAt.lte} AND j."soughtSince" IS NULL AND NOT EXISTS (
      SELECT FROM "message" m WHERE m."jobId" = j."id" AND m."author" = 'customer' AND m."at" > j."sentBackAt"
        AND m."settledHow" IS DISTINCT FROM 'no-answer-needed')
    ORDER BY j."sentBackAt", j."id"`;
  if (rows.length === 0) return [];
  const [carriers, { country }] = await Promise.all([readCarrierRows(), readWorkshop()]);
  return rows
    .map(({ id, version, sentBackAt: since, carrier, to }) => ({
      id,
      version,
      since,
      days: closesAfter(transitTo({ carrier, from: country, to }, carriers)),
    }))
    .filter(({ since, days }) => since <= instantDaysBefore(now, days))
    .slice(0, MOST)
    .map(({ id, version, days }) => ({ id, version, days }));
}

type Sent = { id: string; version: number; sentBackAt: Date; carrier: string; to: string };
