-- AlterTable
ALTER TABLE "check_entry" ADD COLUMN     "probes" JSONB;

-- AlterTable
ALTER TABLE "check_item" ADD COLUMN     "pinTable" TEXT;

-- AlterTable
ALTER TABLE "customer" ADD COLUMN     "erasedAt" TIMESTAMPTZ(3);

-- AlterTable
ALTER TABLE "job" ADD COLUMN     "parcelGrams" INTEGER,
ADD COLUMN     "parcelHeightMm" INTEGER,
ADD COLUMN     "parcelLengthMm" INTEGER,
ADD COLUMN     "parcelWidthMm" INTEGER,
ADD COLUMN     "valueMinor" INTEGER;

-- AlterTable
ALTER TABLE "mail" ADD COLUMN     "bounceNote" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "bouncedAt" TIMESTAMPTZ(3);

-- AlterTable
ALTER TABLE "model" ADD COLUMN     "tariffNumber" TEXT NOT NULL DEFAULT '';

-- AlterTable
ALTER TABLE "photo" ADD COLUMN     "marks" JSONB;

-- AlterTable
ALTER TABLE "workshop" ADD COLUMN     "customsFree" TEXT[] DEFAULT ARRAY[]::TEXT[],
ADD COLUMN     "keepMonths" INTEGER NOT NULL DEFAULT 84,
ADD COLUMN     "storageText" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "unclaimedAfterDays" INTEGER NOT NULL DEFAULT 21,
ADD COLUMN     "unclaimedEveryDays" INTEGER NOT NULL DEFAULT 21,
ADD COLUMN     "unclaimedNotices" INTEGER NOT NULL DEFAULT 3;

-- CreateTable
CREATE TABLE "jumper_wire" (
    "id" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "fromPoint" TEXT NOT NULL,
    "toPoint" TEXT NOT NULL,
    "lengthMm" INTEGER NOT NULL,
    "diameterUm" INTEGER NOT NULL,
    "milliohms" DOUBLE PRECISION NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "userId" TEXT NOT NULL,

    CONSTRAINT "jumper_wire_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "pin_table" (
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "source" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "userId" TEXT NOT NULL,
    "retiredAt" TIMESTAMPTZ(3),

    CONSTRAINT "pin_table_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "lot_recall" (
    "id" TEXT NOT NULL,
    "lotId" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "mails" INTEGER NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "userId" TEXT NOT NULL,

    CONSTRAINT "lot_recall_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "unclaimed_notice" (
    "jobId" TEXT NOT NULL,
    "notice" INTEGER NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "unclaimed_notice_pkey" PRIMARY KEY ("jobId","notice")
);

-- CreateTable
CREATE TABLE "seen_by" (
    "id" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "userId" TEXT NOT NULL,
    "what" TEXT NOT NULL,
    "jobId" TEXT,
    "quoteId" TEXT,
    "subject" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "seen_by_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "carrier" (
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "position" INTEGER NOT NULL DEFAULT 0,
    "kind" TEXT NOT NULL DEFAULT 'post',
    "divisor" INTEGER NOT NULL,
    "wholeSides" BOOLEAN NOT NULL DEFAULT false,
    "stepGrams" INTEGER NOT NULL DEFAULT 1,
    "maxGrams" INTEGER NOT NULL,
    "longestSideMm" INTEGER NOT NULL,
    "maxValueMinor" INTEGER NOT NULL,
    "tracking" TEXT NOT NULL DEFAULT '',
    "isUsed" BOOLEAN NOT NULL DEFAULT true,

    CONSTRAINT "carrier_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "jumper_wire_jobId_idx" ON "jumper_wire"("jobId");

-- CreateIndex
CREATE INDEX "lot_recall_lotId_idx" ON "lot_recall"("lotId");

-- CreateIndex
CREATE INDEX "seen_by_jobId_idx" ON "seen_by"("jobId");

-- CreateIndex
CREATE INDEX "seen_by_quoteId_idx" ON "seen_by"("quoteId");

-- CreateIndex
CREATE INDEX "seen_by_at_idx" ON "seen_by"("at");

-- CreateIndex
CREATE UNIQUE INDEX "carrier_name_key" ON "carrier"("name");

-- AddForeignKey
ALTER TABLE "jumper_wire" ADD CONSTRAINT "jumper_wire_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "lot_recall" ADD CONSTRAINT "lot_recall_lotId_fkey" FOREIGN KEY ("lotId") REFERENCES "lot"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "unclaimed_notice" ADD CONSTRAINT "unclaimed_notice_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "seen_by" ADD CONSTRAINT "seen_by_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "job"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "seen_by" ADD CONSTRAINT "seen_by_quoteId_fkey" FOREIGN KEY ("quoteId") REFERENCES "quote"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- Lots are recalled, wires measured and units noticed for good; a pin table that a sheet was made with stays as it was.
ALTER TABLE "jumper_wire" ADD CONSTRAINT "jumper_wire_sizes" CHECK ("lengthMm" > 0 AND "diameterUm" > 0 AND "milliohms" >= 0);
CREATE TRIGGER "lot_recall_kept" BEFORE UPDATE OR DELETE ON "lot_recall"
  FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "pin_table_kept" BEFORE DELETE ON "pin_table"
  FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
-- The one change a pin table may see: being retired.
CREATE TRIGGER "pin_table_only_retired" BEFORE UPDATE ON "pin_table"
  FOR EACH ROW WHEN ((to_jsonb(OLD) - 'retiredAt') IS DISTINCT FROM (to_jsonb(NEW) - 'retiredAt'))
  EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "seen_by_kept" BEFORE UPDATE ON "seen_by"
  FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
ALTER TABLE "carrier" ADD CONSTRAINT "carrier_sizes"
  CHECK ("divisor" > 0 AND "stepGrams" > 0 AND "maxGrams" > 0 AND "longestSideMm" > 0 AND "maxValueMinor" >= 0);
ALTER TABLE "carrier" ADD CONSTRAINT "carrier_kind_known" CHECK ("kind" IN ('post', 'road'));
