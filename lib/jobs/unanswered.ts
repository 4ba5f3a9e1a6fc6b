import { db } from '@/lib/db/client';
import { STAFF_MAY_WRITE } from '@/lib/quotes/rules/request-states';

/** A job in whatever stage, or a price that was sent, whose last message is the customer's. */
export type Unanswered = {
  of: 'job' | 'quote';
  number: string;
  unit: string;
  customer: string;
  at: Date;
};

/**
 * Jobs and prices on which the customer wrote last, since an instant; the oldest words first. A price that was sent after
 * the words answers them.
 */
export async function readUnanswered(since: Date): Promise<Unanswered[]> {
  return db.$queryRaw<Unanswered[]>`
    WITH last AS (
      SELECT DISTINCT ON ("jobId", "quoteId") "jobId", "quoteId", "author", "at"
      FROM "message" WHERE "at" >= ${since} ORDER BY "jobId", "quoteId", "at" DESC, "id" DESC)
    SELECT 'job' AS "of", j."number", m."maker" || ' ' || m."name" AS "unit", c."name" AS "customer", last."at"
    FROM last
    JOIN "job" j ON j."id" = last."jobId"
    JOIN "model" m ON m."id" = j."modelId"
    JOIN "customer" c ON c."id" = j."customerId"
    WHERE last."author" = 'customer'
    UNION ALL
    SELECT 'quote', q."number", r."device", r."name", last."at"
    FROM last
    JOIN "quote" q ON q."id" = last."quoteId"
    JOIN "quote_request" r ON r."quoteId" = q."id"
    WHERE last."author" = 'customer' AND last."jobId" IS NULL AND r."state" = ANY(${[...STAFF_MAY_WRITE]}::text[])
      AND NOT EXISTS (SELECT FROM "quote_revision" v WHERE v."quoteId" = q."id" AND v."issuedAt" >= last."at")
    ORDER BY "at", "number"`;
}
