-- AlterTable
ALTER TABLE "job" ADD COLUMN     "policyVersionId" TEXT,
ADD COLUMN     "returnFeeMinor" INTEGER;

-- CreateIndex
CREATE INDEX "job_policyVersionId_idx" ON "job"("policyVersionId");

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_policyVersionId_fkey" FOREIGN KEY ("policyVersionId") REFERENCES "policy_version"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- Contracts that were made before: the terms of that day, of the policy the repair has now, and the return fee as it is set now,
-- since no other is known.
UPDATE "job" j SET
  "policyVersionId" = (
    SELECT v."id" FROM "repair" r JOIN "policy_version" v ON v."policyId" = r."policyId"
    WHERE r."id" = j."repairId"
    ORDER BY (v."createdAt" <= j."termsAcceptedAt") DESC,
      CASE WHEN v."createdAt" <= j."termsAcceptedAt" THEN -v."version" ELSE v."version" END
    LIMIT 1
  ),
  "returnFeeMinor" = CASE WHEN j."kind" = 'claim' THEN 0 ELSE (SELECT w."returnFeeMinor" FROM "workshop" w LIMIT 1) END
WHERE j."termsAcceptedAt" IS NOT NULL;
