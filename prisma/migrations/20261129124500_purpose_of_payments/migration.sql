-- AlterTable
ALTER TABLE "payment" ADD COLUMN     "purpose" TEXT NOT NULL DEFAULT 'price';
