-- AlterTable
ALTER TABLE "check_entry" ADD COLUMN     "isOverRange" BOOLEAN NOT NULL DEFAULT false;

-- Only a number can be the end of a range.
ALTER TABLE "check_entry" ADD CONSTRAINT "check_entry_over_range" CHECK (NOT "isOverRange" OR "reading" IS NOT NULL);
