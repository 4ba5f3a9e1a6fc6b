-- AlterTable
ALTER TABLE "claim" ADD COLUMN     "reopenedAt" TIMESTAMPTZ(3);
