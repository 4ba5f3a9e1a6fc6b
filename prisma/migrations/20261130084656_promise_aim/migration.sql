-- AlterTable
ALTER TABLE "workshop" ADD COLUMN     "promiseAim" INTEGER NOT NULL DEFAULT 80;
