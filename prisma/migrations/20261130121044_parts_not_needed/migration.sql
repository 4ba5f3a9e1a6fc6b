-- CreateTable
CREATE TABLE "part_not_needed" (
    "jobId" TEXT NOT NULL,
    "partId" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "userId" TEXT NOT NULL,

    CONSTRAINT "part_not_needed_pkey" PRIMARY KEY ("jobId","partId")
);

-- CreateIndex
CREATE INDEX "part_not_needed_partId_idx" ON "part_not_needed"("partId");

-- AddForeignKey
ALTER TABLE "part_not_needed" ADD CONSTRAINT "part_not_needed_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "part_not_needed" ADD CONSTRAINT "part_not_needed_partId_fkey" FOREIGN KEY ("partId") REFERENCES "part"("id") ON DELETE CASCADE ON UPDATE CASCADE;
