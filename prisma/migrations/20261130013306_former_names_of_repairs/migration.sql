-- A price that was agreed to names its repair in words; so that it is still found after a new name was given, the old ones stay.
ALTER TABLE "repair" ADD COLUMN     "formerNames" TEXT[] DEFAULT ARRAY[]::TEXT[];

-- Bookings from the price list bear the name of their day.
UPDATE "repair" r SET "formerNames" = b.names
FROM (
  SELECT j."repairId", ARRAY_AGG(DISTINCT l."description") AS names
  FROM "job" j JOIN "quote" q ON q."jobId" = j."id"
  JOIN "quote_revision" v ON v."quoteId" = q."id" AND v."revision" = 1
  JOIN "quote_line" l ON l."revisionId" = v."id" AND l."kind" = 'labour'
  JOIN "repair" n ON n."id" = j."repairId" AND n."name" <> l."description"
  WHERE j."kind" = 'repair' AND j."termsAcceptedAt" IS NOT NULL
    AND NOT EXISTS (SELECT 1 FROM "quote_request" a WHERE a."quoteId" = q."id")
  GROUP BY j."repairId"
) b WHERE b."repairId" = r."id";

CREATE FUNCTION "keep_former_name"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  NEW."formerNames" := ARRAY_APPEND(ARRAY_REMOVE(OLD."formerNames", OLD."name"), OLD."name");
  RETURN NEW;
END $$;
CREATE TRIGGER "repair_former_name" BEFORE UPDATE OF "name" ON "repair"
  FOR EACH ROW WHEN (OLD."name" IS DISTINCT FROM NEW."name") EXECUTE FUNCTION "keep_former_name"();
