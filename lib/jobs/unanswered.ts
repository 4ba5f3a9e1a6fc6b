import { db } from '@/lib/db/client';
import { STAFF_MAY_WRITE } from '@/lib/quotes/rules/request-states';

/** A job in whatever stage, or a price that was sent, with words of its customer that wait for us. */
export type Unanswered = {
  of: 'job' | 'quote';
  number: string;
  unit: string;
  customer: string;
  /** when the first of them was written */
  at: Date;
};

/**
 * Jobs and prices whose customer wrote what was neither answered nor settled (write-settled.ts), however long ago; the oldest
 * words first. What is written on a request before its price waits with the request.
 */
export async function readUnanswered(): Promise<Unanswered[]> {
  return db.$queryRaw<Unanswered[]>`
    WITH waiting AS (
      SELECT "jobId", "quoteId", min("at") AS "at" FROM "message"
      WHERE "author" = 'customer' AND "settledAt" IS NULL GROUP BY "jobId", "quoteId")
    SELECT 'job' AS "of", j."number", m."maker" || ' ' || m."name" AS "unit", c."name" AS "customer", waiting."at"
    FROM waiting
    JOIN "job" j ON j."id" = waiting."jobId"
    JOIN "model" m ON m."id" = j."modelId"
    JOIN "customer" c ON c."id" = j."customerId"
    UNION ALL
    SELECT 'quote', q."number", r."device", r."name", waiting."at"
    FROM waiting
    JOIN "quote" q ON q."id" = waiting."quoteId"
    JOIN "quote_request" r ON r."quoteId" = q."id"
    WHERE waiting."jobId" IS NULL AND r."state" = ANY(${[...STAFF_MAY_WRITE]}::text[])
    ORDER BY "at", "number"`;
}
