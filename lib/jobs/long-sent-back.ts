import { instantDaysBefore } from '@/lib/calendar/spans';
import { db } from '@/lib/db/client';
import type { Prisma } from '@/lib/db/generated/client';

/** Days after which a unit that was sent back counts as delivered; common practice, no source. */
export const CLOSE_AFTER_DAYS = 14;

/** So many jobs a round at most, so that a round stays short; the next one goes on. */
const MOST = 200;

/** Sent back so long ago that it counts as delivered. */
export function isLongSentBack(now: Date) {
  return { stage: 'sent-back', sentBackAt: { lte: instantDaysBefore(now, CLOSE_AFTER_DAYS) } };
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
export async function longSentBack(now: Date): Promise<{ id: string; version: number }[]> {
  const { sentBackAt } = isLongSentBack(now);
  return db.$queryRaw<{ id: string; version: number }[]>`
    SELECT j."id", j."version" FROM "job" j
    WHERE j."stage" = 'sent-back' AND j."sentBackAt" <= ${sentBackAt.lte} AND j."soughtSince" IS NULL AND NOT EXISTS (
      SELECT FROM "message" m WHERE m."jobId" = j."id" AND m."author" = 'customer' AND m."at" > j."sentBackAt"
        AND m."settledHow" IS DISTINCT FROM 'no-answer-needed')
    ORDER BY j."sentBackAt", j."id" LIMIT ${MOST}`;
}
