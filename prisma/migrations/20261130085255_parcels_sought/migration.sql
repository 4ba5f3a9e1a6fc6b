-- AlterTable
ALTER TABLE "job" ADD COLUMN     "soughtSince" TIMESTAMPTZ(3);

-- CreateIndex
CREATE INDEX "job_soughtSince_idx" ON "job"("soughtSince");
