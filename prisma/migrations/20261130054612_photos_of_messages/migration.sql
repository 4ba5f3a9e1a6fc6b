-- AlterTable
ALTER TABLE "photo" ADD COLUMN     "messageId" TEXT;

-- CreateIndex
CREATE INDEX "photo_messageId_idx" ON "photo"("messageId");

-- AddForeignKey
ALTER TABLE "photo" ADD CONSTRAINT "photo_messageId_fkey" FOREIGN KEY ("messageId") REFERENCES "message"("id") ON DELETE SET NULL ON UPDATE CASCADE;
