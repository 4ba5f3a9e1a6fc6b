-- AlterTable
ALTER TABLE "quote_revision" ADD COLUMN     "repairId" TEXT;

-- AddForeignKey
ALTER TABLE "quote_revision" ADD CONSTRAINT "quote_revision_repairId_fkey" FOREIGN KEY ("repairId") REFERENCES "repair"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- It stays as the price does.
DROP TRIGGER "quote_revision_kept" ON "quote_revision";
CREATE TRIGGER "quote_revision_kept" BEFORE UPDATE ON "quote_revision"
  FOR EACH ROW WHEN (
    (OLD."decidedAt" IS NOT NULL AND (OLD."decidedAt", OLD."decidedBy", OLD."agreedText")
       IS DISTINCT FROM (NEW."decidedAt", NEW."decidedBy", NEW."agreedText"))
    OR (OLD."id", OLD."quoteId", OLD."revision", OLD."isGross", OLD."reason", OLD."onYes", OLD."onNo", OLD."proposal",
        OLD."workingDays", OLD."note", OLD."issuedAt", OLD."validUntil", OLD."netMinor", OLD."taxMinor", OLD."grossMinor",
        OLD."isInspectionFeeTakenOff", OLD."policyVersionId", OLD."returnFeeMinor", OLD."inspectionFeeMinor",
        OLD."replacementText", OLD."repairId")
       IS DISTINCT FROM
       (NEW."id", NEW."quoteId", NEW."revision", NEW."isGross", NEW."reason", NEW."onYes", NEW."onNo", NEW."proposal",
        NEW."workingDays", NEW."note", NEW."issuedAt", NEW."validUntil", NEW."netMinor", NEW."taxMinor", NEW."grossMinor",
        NEW."isInspectionFeeTakenOff", NEW."policyVersionId", NEW."returnFeeMinor", NEW."inspectionFeeMinor",
        NEW."replacementText", NEW."repairId")
  ) EXECUTE FUNCTION "refuse_change"();
