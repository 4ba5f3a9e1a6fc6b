import { dayInZone, daysBetween } from '@/lib/calendar/day';
import { instantDaysBefore } from '@/lib/calendar/spans';
import { db } from '@/lib/db/client';
import type { Prisma } from '@/lib/db/generated/client';
import { readCarrierRows } from '@/lib/parcels/records';
import { transitTo } from '@/lib/parcels/rules/carriers';
import { readCalendar, readWorkshop } from '@/lib/workshop/records';
import { isDelivered, LEAST_DAYS } from './rules/closing';

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

type LongSent = { id: string; version: number; days: number };

/**
 * Jobs that the clock closes, the oldest first: sent back long ago, their parcel is not looked for, and their customer has not written
 * since (`isWrittenAbout`). `days` are those since they were sent.
 */
export async function longSentBack(now: Date): Promise<LongSent[]> {
  const { sentBackAt } = isLongSentBack(now);
  const rows = await db.$queryRaw<Sent[]>`
    SELECT j."id", j."version", j."sentBackAt", j."carrier", c."country" AS "to"
    FROM "job" j JOIN "customer" c ON c."id" = j."customerId"
    WHERE j."stage" = 'sent-back' AND j."sentBackAt" <= ${sentBackAt.lte} AND j."soughtSince" IS NULL AND NOT EXISTS (
      SELECT FROM "message" m WHERE m."jobId" = j."id" AND m."author" = 'customer' AND m."at" > j."sentBackAt"
        AND m."settledHow" IS DISTINCT FROM 'no-answer-needed')
    ORDER BY j."sentBackAt", j."id"`;
  if (rows.length === 0) return [];
  const [carriers, workshop] = await Promise.all([readCarrierRows(), readWorkshop()]);
  const today = dayInZone(now, workshop.timeZone);
  const sent = rows.map((row) => ({ ...row, sentOn: dayInZone(row.sentBackAt, workshop.timeZone) }));
  const calendar = await readCalendar(
    workshop,
    today,
    db,
    sent.map(({ sentOn }) => sentOn),
  );
  return sent
    .filter(({ sentOn, carrier, to }) => {
      const transitDays = transitTo({ carrier, from: workshop.country, to }, carriers);
      return isDelivered({ sentOn, transitDays }, { today, calendar });
    })
    .slice(0, MOST)
    .map(({ id, version, sentOn }) => ({ id, version, days: daysBetween(sentOn, today) }));
}

type Sent = { id: string; version: number; sentBackAt: Date; carrier: string; to: string };
