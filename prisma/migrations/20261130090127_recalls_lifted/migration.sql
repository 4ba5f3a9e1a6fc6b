-- CreateTable
CREATE TABLE "lot_recall_lifted" (
    "recallId" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "mails" INTEGER NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "userId" TEXT NOT NULL,

    CONSTRAINT "lot_recall_lifted_pkey" PRIMARY KEY ("recallId")
);

-- AddForeignKey
ALTER TABLE "lot_recall_lifted" ADD CONSTRAINT "lot_recall_lifted_recallId_fkey" FOREIGN KEY ("recallId") REFERENCES "lot_recall"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

CREATE TRIGGER "lot_recall_lifted_kept" BEFORE UPDATE OR DELETE ON "lot_recall_lifted"
  FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
