-- CreateTable
CREATE TABLE "sheet_beside" (
    "id" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "sheetId" TEXT NOT NULL,
    "isByPrice" BOOLEAN NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "sheet_beside_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "sheet_beside_jobId_sheetId_key" ON "sheet_beside"("jobId", "sheetId");

-- AddForeignKey
ALTER TABLE "sheet_beside" ADD CONSTRAINT "sheet_beside_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sheet_beside" ADD CONSTRAINT "sheet_beside_sheetId_fkey" FOREIGN KEY ("sheetId") REFERENCES "check_sheet"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
