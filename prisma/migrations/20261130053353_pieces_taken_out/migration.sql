-- AlterTable
ALTER TABLE "part_use" ADD COLUMN     "takenOutAt" TIMESTAMPTZ(3);
