-- A walk-in agrees to the terms with the first yes to a price; until then there is no such moment.
ALTER TABLE "job" ALTER COLUMN "termsAcceptedAt" DROP NOT NULL;
UPDATE "job" SET "termsAcceptedAt" = NULL WHERE "termsAcceptedAt" = 'epoch';
