-- CreateTable
CREATE TABLE "awaited_part" (
    "id" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "partId" TEXT,
    "name" TEXT NOT NULL,
    "quantity" INTEGER NOT NULL,
    "expectedOn" DATE,

    CONSTRAINT "awaited_part_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "awaited_part_jobId_idx" ON "awaited_part"("jobId");

-- CreateIndex
CREATE INDEX "awaited_part_partId_idx" ON "awaited_part"("partId");

-- AddForeignKey
ALTER TABLE "awaited_part" ADD CONSTRAINT "awaited_part_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "awaited_part" ADD CONSTRAINT "awaited_part_partId_fkey" FOREIGN KEY ("partId") REFERENCES "part"("id") ON DELETE SET NULL ON UPDATE CASCADE;

ALTER TABLE "awaited_part" ADD CONSTRAINT "awaited_part_pieces" CHECK ("quantity" > 0);
