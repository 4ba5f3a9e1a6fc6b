import { db } from '@/lib/db/client';

/** Days after which a unit that was sent back counts as delivered; common practice, no source. */
export const CLOSE_AFTER_DAYS = 14;

const DAY = 86_400_000;
/** So many jobs a round at most, so that a round stays short; the next one goes on. */
const MOST = 200;

/**
 * Jobs whose unit was sent back so long ago that it counts as delivered, the oldest first; or those of them whose customer
 * has written since. A parcel that somebody reports missing did not come, and only a person can read which it is: words that a
 * person read and called in need of no answer report nothing.
 */
export async function longSentBack(
  now: Date,
  { isWrittenAbout }: { isWrittenAbout: boolean },
): Promise<{ id: string; version: number }[]> {
  const until = new Date(now.getTime() - CLOSE_AFTER_DAYS * DAY);
  return db.$queryRaw<{ id: string; version: number }[]>`
    SELECT j."id", j."version" FROM "job" j
    WHERE j."stage" = 'sent-back' AND j."sentBackAt" <= ${until} AND ${isWrittenAbout} = EXISTS (
      SELECT FROM "message" m WHERE m."jobId" = j."id" AND m."author" = 'customer' AND m."at" > j."sentBackAt"
        AND m."settledHow" IS DISTINCT FROM 'no-answer-needed')
    ORDER BY j."sentBackAt", j."id" LIMIT ${MOST}`;
}
