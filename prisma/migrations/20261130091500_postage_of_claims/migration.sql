-- What posting the unit to the workshop cost the customer of a covered claim: asked for with the amount, then paid back or not wanted.
ALTER TABLE "claim" ADD COLUMN     "postageAskedAt" TIMESTAMPTZ(3),
ADD COLUMN     "postageMinor" INTEGER,
ADD COLUMN     "postageState" TEXT,
ADD COLUMN     "postageTo" TEXT NOT NULL DEFAULT '';

UPDATE "claim" c SET "postageState" = 'paid'
WHERE EXISTS (SELECT 1 FROM "payment" p WHERE p."jobId" = c."jobId" AND p."purpose" = 'claim-postage');

ALTER TABLE "claim" ADD CONSTRAINT "claim_postage_known" CHECK ("postageState" IN ('asked', 'paid', 'not-wanted')),
ADD CONSTRAINT "claim_postage_asked_with_amount"
  CHECK ("postageState" <> 'asked' OR (COALESCE("postageMinor", 0) > 0 AND "postageAskedAt" IS NOT NULL));

CREATE INDEX "claim_postage_asked" ON "claim" ("jobId") WHERE "postageState" = 'asked';
