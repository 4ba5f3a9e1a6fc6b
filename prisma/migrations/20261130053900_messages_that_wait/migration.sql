-- AlterTable
ALTER TABLE "message" ADD COLUMN     "settledAt" TIMESTAMPTZ(3),
ADD COLUMN     "settledById" TEXT,
ADD COLUMN     "settledHow" TEXT,
ADD COLUMN     "settledNote" TEXT NOT NULL DEFAULT '';

ALTER TABLE "message" ADD CONSTRAINT "message_settled_how" CHECK (
  "settledHow" IN ('answered', 'answered-otherwise', 'no-answer-needed') AND "settledAt" IS NOT NULL
  OR "settledHow" IS NULL);

-- What was answered: staff wrote after it, or sent a price after it.
UPDATE "message" m SET "settledHow" = 'answered', "settledAt" = coalesce(
  (SELECT min(s."at") FROM "message" s
    WHERE s."author" = 'staff' AND (s."at", s."id") > (m."at", m."id") AND (s."jobId" = m."jobId" OR s."quoteId" = m."quoteId")),
  (SELECT min(v."issuedAt") FROM "quote_revision" v WHERE v."quoteId" = m."quoteId" AND v."issuedAt" >= m."at"))
WHERE m."author" = 'customer' AND (
  EXISTS (SELECT FROM "message" s
    WHERE s."author" = 'staff' AND (s."at", s."id") > (m."at", m."id") AND (s."jobId" = m."jobId" OR s."quoteId" = m."quoteId"))
  OR EXISTS (SELECT FROM "quote_revision" v WHERE v."quoteId" = m."quoteId" AND v."issuedAt" >= m."at"));

-- Nobody was shown what was older than sixty days, and nobody said what became of it.
UPDATE "message" SET "settledAt" = now()
WHERE "author" = 'customer' AND "settledAt" IS NULL AND "at" < now() - interval '60 days';

-- Today reads what waits, out of all that was ever written.
DROP INDEX "message_at_idx";
CREATE INDEX "message_waits" ON "message"("at") WHERE "author" = 'customer' AND "settledAt" IS NULL;
