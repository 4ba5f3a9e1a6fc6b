-- AlterTable
ALTER TABLE "invoice" ALTER COLUMN "suppliedOn" DROP NOT NULL;
