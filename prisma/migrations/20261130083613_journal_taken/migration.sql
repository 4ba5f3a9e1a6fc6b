-- AlterTable
ALTER TABLE "payment" ADD COLUMN     "takingId" TEXT;

-- CreateTable
CREATE TABLE "journal_taking" (
    "id" TEXT NOT NULL,
    "month" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "userId" TEXT NOT NULL,

    CONSTRAINT "journal_taking_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "journal_taking_month_idx" ON "journal_taking"("month");

-- CreateIndex
CREATE INDEX "payment_takingId_idx" ON "payment"("takingId");

-- AddForeignKey
ALTER TABLE "payment" ADD CONSTRAINT "payment_takingId_fkey" FOREIGN KEY ("takingId") REFERENCES "journal_taking"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
