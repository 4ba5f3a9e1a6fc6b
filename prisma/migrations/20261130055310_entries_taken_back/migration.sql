-- AlterTable
ALTER TABLE "finding" ADD COLUMN     "takenBackAt" TIMESTAMPTZ(3);

-- AlterTable
ALTER TABLE "jumper_wire" ADD COLUMN     "takenBackAt" TIMESTAMPTZ(3);

-- AlterTable
ALTER TABLE "work_entry" ADD COLUMN     "takenBackAt" TIMESTAMPTZ(3);
