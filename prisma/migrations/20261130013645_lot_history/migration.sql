-- AlterTable
ALTER TABLE "part" ALTER COLUMN "reorderAt" DROP NOT NULL;

-- CreateTable
CREATE TABLE "lot_event" (
    "id" TEXT NOT NULL,
    "lotId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "data" JSONB NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "userId" TEXT NOT NULL,

    CONSTRAINT "lot_event_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "lot_event_lotId_idx" ON "lot_event"("lotId");

-- AddForeignKey
ALTER TABLE "lot_event" ADD CONSTRAINT "lot_event_lotId_fkey" FOREIGN KEY ("lotId") REFERENCES "lot"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- What a lot said before it was corrected, and who wrote pieces off, stays.
CREATE TRIGGER "lot_event_kept" BEFORE UPDATE OR DELETE ON "lot_event"
  FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
