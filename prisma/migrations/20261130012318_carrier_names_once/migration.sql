-- A name stands once on the list in any case. Two owners who added it at the same moment may have left it twice: the later one then
-- carries the end of its id behind its name, and whoever looks a carrier up by its name finds the first one as before.
UPDATE "carrier" SET "name" = left("name", 70) || ' ' || right("id", 8)
  WHERE "id" IN (
    SELECT "id" FROM (
      SELECT "id", row_number() OVER (PARTITION BY lower("name") ORDER BY "position", "name") AS "nth" FROM "carrier"
    ) AS "named" WHERE "nth" > 1
  );

DROP INDEX "carrier_name_key";
CREATE UNIQUE INDEX "carrier_name_key" ON "carrier" (lower("name"));
