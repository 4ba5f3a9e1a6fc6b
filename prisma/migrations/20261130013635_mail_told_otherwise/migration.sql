-- AlterTable
ALTER TABLE "mail" ADD COLUMN     "toldAt" TIMESTAMPTZ(3),
ADD COLUMN     "toldById" TEXT,
ADD COLUMN     "toldNote" TEXT NOT NULL DEFAULT '';
