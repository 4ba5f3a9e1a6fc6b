-- DropForeignKey
ALTER TABLE "message" DROP CONSTRAINT "message_jobId_fkey";

-- DropForeignKey
ALTER TABLE "photo" DROP CONSTRAINT "photo_jobId_fkey";

-- DropForeignKey
ALTER TABLE "quote" DROP CONSTRAINT "quote_jobId_fkey";

-- AlterTable
ALTER TABLE "booking_draft" ADD COLUMN     "quoteId" TEXT;

-- AlterTable
ALTER TABLE "job" ADD COLUMN     "startRequestedAt" TIMESTAMPTZ(3),
ADD COLUMN     "withdrawUntil" DATE,
ADD COLUMN     "withdrawnAt" TIMESTAMPTZ(3);

-- AlterTable
ALTER TABLE "mail" ADD COLUMN     "quoteId" TEXT;

-- AlterTable
ALTER TABLE "message" ADD COLUMN     "quoteId" TEXT,
ALTER COLUMN "jobId" DROP NOT NULL;

-- AlterTable
ALTER TABLE "model" ADD COLUMN     "heightMm" INTEGER NOT NULL DEFAULT 0,
ADD COLUMN     "lengthMm" INTEGER NOT NULL DEFAULT 0,
ADD COLUMN     "widthMm" INTEGER NOT NULL DEFAULT 0;

-- AlterTable
ALTER TABLE "photo" ADD COLUMN     "quoteId" TEXT,
ALTER COLUMN "jobId" DROP NOT NULL;

-- AlterTable
ALTER TABLE "private_link" ADD COLUMN     "quoteId" TEXT,
ALTER COLUMN "jobId" DROP NOT NULL;

-- AlterTable
ALTER TABLE "quote" ADD COLUMN     "version" INTEGER NOT NULL DEFAULT 1,
ALTER COLUMN "jobId" DROP NOT NULL;

-- AlterTable
ALTER TABLE "quote_revision" ADD COLUMN     "note" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "proposal" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "remindedAt" TIMESTAMPTZ(3),
ADD COLUMN     "workingDays" INTEGER;

-- AlterTable
ALTER TABLE "workshop" ADD COLUMN     "bankHolder" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "bic" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "dueDays" INTEGER NOT NULL DEFAULT 14,
ADD COLUMN     "iban" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "isInspectionFeeTakenOff" BOOLEAN NOT NULL DEFAULT true,
ADD COLUMN     "payLink" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "remindDays" INTEGER NOT NULL DEFAULT 5,
ADD COLUMN     "replacementText" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "taxExemptReason" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "taxName" TEXT NOT NULL DEFAULT 'VAT',
ADD COLUMN     "withdrawalRule" TEXT NOT NULL DEFAULT 'off';

-- CreateTable
CREATE TABLE "repair_price" (
    "id" TEXT NOT NULL,
    "repairId" TEXT NOT NULL,
    "priceMinor" INTEGER NOT NULL,
    "taxCategory" TEXT NOT NULL,
    "taxRateBps" INTEGER NOT NULL,
    "since" TIMESTAMPTZ(3) NOT NULL,
    "userId" TEXT,

    CONSTRAINT "repair_price_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "repair_part" (
    "repairId" TEXT NOT NULL,
    "partId" TEXT NOT NULL,
    "quantity" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "repair_part_pkey" PRIMARY KEY ("repairId","partId")
);

-- CreateTable
CREATE TABLE "quote_request" (
    "quoteId" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "modelId" TEXT,
    "repairId" TEXT,
    "device" TEXT NOT NULL,
    "serialTyped" TEXT NOT NULL DEFAULT '',
    "serialKey" TEXT NOT NULL DEFAULT '',
    "symptoms" TEXT[],
    "problem" TEXT NOT NULL,
    "history" TEXT[],
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "emailKey" TEXT NOT NULL,
    "phone" TEXT NOT NULL DEFAULT '',
    "askedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "quote_request_pkey" PRIMARY KEY ("quoteId")
);

-- CreateTable
CREATE TABLE "quote_event" (
    "id" TEXT NOT NULL,
    "quoteId" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "actorKind" TEXT NOT NULL,
    "actorId" TEXT,
    "data" JSONB NOT NULL,

    CONSTRAINT "quote_event_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "invoice_series" (
    "year" INTEGER NOT NULL,
    "last" INTEGER NOT NULL,

    CONSTRAINT "invoice_series_pkey" PRIMARY KEY ("year")
);

-- CreateTable
CREATE TABLE "invoice" (
    "id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "year" INTEGER NOT NULL,
    "sequence" INTEGER NOT NULL,
    "number" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "correctsId" TEXT,
    "reason" TEXT NOT NULL DEFAULT '',
    "currency" TEXT NOT NULL,
    "isGross" BOOLEAN NOT NULL,
    "issuedOn" DATE NOT NULL,
    "suppliedOn" DATE NOT NULL,
    "dueOn" DATE NOT NULL,
    "issuedAt" TIMESTAMPTZ(3) NOT NULL,
    "userId" TEXT,
    "seller" JSONB NOT NULL,
    "buyer" JSONB NOT NULL,
    "netMinor" INTEGER NOT NULL,
    "taxMinor" INTEGER NOT NULL,
    "roundingMinor" INTEGER NOT NULL DEFAULT 0,
    "payableMinor" INTEGER NOT NULL,
    "fileKey" TEXT,
    "sha256" TEXT,

    CONSTRAINT "invoice_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "invoice_line" (
    "id" TEXT NOT NULL,
    "invoiceId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "description" TEXT NOT NULL,
    "amountMinor" INTEGER NOT NULL,
    "netMinor" INTEGER NOT NULL,
    "taxCategory" TEXT NOT NULL,
    "taxRateBps" INTEGER NOT NULL,

    CONSTRAINT "invoice_line_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "invoice_tax" (
    "invoiceId" TEXT NOT NULL,
    "category" TEXT NOT NULL,
    "rateBps" INTEGER NOT NULL,
    "baseMinor" INTEGER NOT NULL,
    "taxMinor" INTEGER NOT NULL,

    CONSTRAINT "invoice_tax_pkey" PRIMARY KEY ("invoiceId","category","rateBps")
);

-- CreateIndex
CREATE INDEX "repair_price_repairId_since_idx" ON "repair_price"("repairId", "since");

-- CreateIndex
CREATE INDEX "repair_part_partId_idx" ON "repair_part"("partId");

-- CreateIndex
CREATE INDEX "quote_request_state_askedAt_idx" ON "quote_request"("state", "askedAt");

-- CreateIndex
CREATE INDEX "quote_request_emailKey_idx" ON "quote_request"("emailKey");

-- CreateIndex
CREATE INDEX "quote_request_modelId_idx" ON "quote_request"("modelId");

-- CreateIndex
CREATE INDEX "quote_request_repairId_idx" ON "quote_request"("repairId");

-- CreateIndex
CREATE UNIQUE INDEX "quote_event_quoteId_version_key" ON "quote_event"("quoteId", "version");

-- CreateIndex
CREATE UNIQUE INDEX "invoice_number_key" ON "invoice"("number");

-- CreateIndex
CREATE UNIQUE INDEX "invoice_fileKey_key" ON "invoice"("fileKey");

-- CreateIndex
CREATE INDEX "invoice_jobId_idx" ON "invoice"("jobId");

-- CreateIndex
CREATE INDEX "invoice_correctsId_idx" ON "invoice"("correctsId");

-- CreateIndex
CREATE INDEX "invoice_issuedOn_idx" ON "invoice"("issuedOn");

-- CreateIndex
CREATE UNIQUE INDEX "invoice_year_sequence_key" ON "invoice"("year", "sequence");

-- CreateIndex
CREATE UNIQUE INDEX "invoice_line_invoiceId_position_key" ON "invoice_line"("invoiceId", "position");

-- CreateIndex
CREATE INDEX "booking_draft_quoteId_idx" ON "booking_draft"("quoteId");

-- CreateIndex
CREATE INDEX "mail_quoteId_idx" ON "mail"("quoteId");

-- CreateIndex
CREATE INDEX "message_quoteId_idx" ON "message"("quoteId");

-- CreateIndex
CREATE INDEX "photo_quoteId_idx" ON "photo"("quoteId");

-- CreateIndex
CREATE INDEX "private_link_quoteId_idx" ON "private_link"("quoteId");

-- AddForeignKey
ALTER TABLE "repair_price" ADD CONSTRAINT "repair_price_repairId_fkey" FOREIGN KEY ("repairId") REFERENCES "repair"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "repair_part" ADD CONSTRAINT "repair_part_repairId_fkey" FOREIGN KEY ("repairId") REFERENCES "repair"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "repair_part" ADD CONSTRAINT "repair_part_partId_fkey" FOREIGN KEY ("partId") REFERENCES "part"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "booking_draft" ADD CONSTRAINT "booking_draft_quoteId_fkey" FOREIGN KEY ("quoteId") REFERENCES "quote"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "private_link" ADD CONSTRAINT "private_link_quoteId_fkey" FOREIGN KEY ("quoteId") REFERENCES "quote"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "photo" ADD CONSTRAINT "photo_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "job"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "photo" ADD CONSTRAINT "photo_quoteId_fkey" FOREIGN KEY ("quoteId") REFERENCES "quote"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "message" ADD CONSTRAINT "message_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "job"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "message" ADD CONSTRAINT "message_quoteId_fkey" FOREIGN KEY ("quoteId") REFERENCES "quote"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "mail" ADD CONSTRAINT "mail_quoteId_fkey" FOREIGN KEY ("quoteId") REFERENCES "quote"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "quote" ADD CONSTRAINT "quote_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "job"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "quote_request" ADD CONSTRAINT "quote_request_quoteId_fkey" FOREIGN KEY ("quoteId") REFERENCES "quote"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "quote_request" ADD CONSTRAINT "quote_request_modelId_fkey" FOREIGN KEY ("modelId") REFERENCES "model"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "quote_request" ADD CONSTRAINT "quote_request_repairId_fkey" FOREIGN KEY ("repairId") REFERENCES "repair"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "quote_event" ADD CONSTRAINT "quote_event_quoteId_fkey" FOREIGN KEY ("quoteId") REFERENCES "quote"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "invoice" ADD CONSTRAINT "invoice_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "invoice" ADD CONSTRAINT "invoice_correctsId_fkey" FOREIGN KEY ("correctsId") REFERENCES "invoice"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "invoice_line" ADD CONSTRAINT "invoice_line_invoiceId_fkey" FOREIGN KEY ("invoiceId") REFERENCES "invoice"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "invoice_tax" ADD CONSTRAINT "invoice_tax_invoiceId_fkey" FOREIGN KEY ("invoiceId") REFERENCES "invoice"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
