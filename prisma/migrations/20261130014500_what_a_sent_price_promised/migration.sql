-- AlterTable
ALTER TABLE "quote_revision" ADD COLUMN     "inspectionFeeMinor" INTEGER,
ADD COLUMN     "isInspectionFeeTakenOff" BOOLEAN,
ADD COLUMN     "policyVersionId" TEXT,
ADD COLUMN     "replacementText" TEXT,
ADD COLUMN     "returnFeeMinor" INTEGER;

-- AddForeignKey
ALTER TABLE "quote_revision" ADD CONSTRAINT "quote_revision_policyVersionId_fkey" FOREIGN KEY ("policyVersionId") REFERENCES "policy_version"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- Prices that were written before: a line that takes the fee off says so itself; of others what is set now, since nothing else is known.
UPDATE "quote_revision" r SET "isInspectionFeeTakenOff" =
  EXISTS (SELECT FROM "quote_line" l WHERE l."revisionId" = r."id" AND l."kind" = 'inspection-fee' AND l."amountMinor" < 0)
  OR coalesce((SELECT w."isInspectionFeeTakenOff" FROM "workshop" w LIMIT 1), true);
ALTER TABLE "quote_revision" ALTER COLUMN "isInspectionFeeTakenOff" SET NOT NULL;

-- Those that were asked for: the cover that the job of an accepted one has, else the terms of the day of the answer or of the
-- sending, of the policy the repair has now; the return fee of that job, and of the rest what is set now.
UPDATE "quote_revision" r SET
  "policyVersionId" = coalesce(
    (SELECT j."policyVersionId" FROM "job" j WHERE j."id" = q."jobId" AND r."state" = 'accepted'),
    (
      SELECT v."id" FROM "repair" p JOIN "policy_version" v ON v."policyId" = p."policyId"
      WHERE p."id" = k."repairId"
      ORDER BY (v."createdAt" <= coalesce(r."decidedAt", r."issuedAt")) DESC,
        CASE WHEN v."createdAt" <= coalesce(r."decidedAt", r."issuedAt") THEN -v."version" ELSE v."version" END
      LIMIT 1
    )
  ),
  "returnFeeMinor" = coalesce(
    (SELECT j."returnFeeMinor" FROM "job" j WHERE j."id" = q."jobId" AND r."state" = 'accepted'),
    w."returnFeeMinor"
  ),
  "inspectionFeeMinor" = w."inspectionFeeMinor",
  "replacementText" = w."replacementText"
FROM "quote" q, "quote_request" k, "workshop" w
WHERE q."id" = r."quoteId" AND k."quoteId" = q."id" AND r."proposal" <> '';

-- What was promised with a price stays as the price does.
DROP TRIGGER "quote_revision_kept" ON "quote_revision";
CREATE TRIGGER "quote_revision_kept" BEFORE UPDATE ON "quote_revision"
  FOR EACH ROW WHEN (
    (OLD."decidedAt" IS NOT NULL AND (OLD."decidedAt", OLD."decidedBy", OLD."agreedText")
       IS DISTINCT FROM (NEW."decidedAt", NEW."decidedBy", NEW."agreedText"))
    OR (OLD."id", OLD."quoteId", OLD."revision", OLD."isGross", OLD."reason", OLD."onYes", OLD."onNo", OLD."proposal",
        OLD."workingDays", OLD."note", OLD."issuedAt", OLD."validUntil", OLD."netMinor", OLD."taxMinor", OLD."grossMinor",
        OLD."isInspectionFeeTakenOff", OLD."policyVersionId", OLD."returnFeeMinor", OLD."inspectionFeeMinor",
        OLD."replacementText")
       IS DISTINCT FROM
       (NEW."id", NEW."quoteId", NEW."revision", NEW."isGross", NEW."reason", NEW."onYes", NEW."onNo", NEW."proposal",
        NEW."workingDays", NEW."note", NEW."issuedAt", NEW."validUntil", NEW."netMinor", NEW."taxMinor", NEW."grossMinor",
        NEW."isInspectionFeeTakenOff", NEW."policyVersionId", NEW."returnFeeMinor", NEW."inspectionFeeMinor",
        NEW."replacementText")
  ) EXECUTE FUNCTION "refuse_change"();
