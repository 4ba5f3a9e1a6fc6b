-- What is kept was set as the workshop keeps its prices now, as far as anybody can tell. A row is never updated (its trigger refuses
-- it), so the column comes with the value in it.
DO $$
BEGIN
  EXECUTE format('ALTER TABLE "repair_price" ADD COLUMN "isGross" BOOLEAN NOT NULL DEFAULT %L',
    COALESCE((SELECT "pricesIncludeTax" FROM "workshop" WHERE "id" = 1), true));
END $$;
ALTER TABLE "repair_price" ALTER COLUMN "isGross" DROP DEFAULT;
