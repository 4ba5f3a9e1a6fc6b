-- AlterTable
ALTER TABLE "claim" ADD COLUMN     "ownerRenewedAt" TIMESTAMPTZ(3),
ADD COLUMN     "ownerRenewedLines" TEXT[] DEFAULT ARRAY[]::TEXT[];
