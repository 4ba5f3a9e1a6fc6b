-- AlterTable
ALTER TABLE "policy" ADD COLUMN     "retiredAt" TIMESTAMPTZ(3);
