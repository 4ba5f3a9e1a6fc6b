-- AlterTable
ALTER TABLE "claim" ADD COLUMN     "renewedLines" TEXT[] DEFAULT ARRAY[]::TEXT[],
ADD COLUMN     "renewedNamedAt" TIMESTAMPTZ(3),
ADD COLUMN     "renewedNamedBy" TEXT;
