-- AlterTable
ALTER TABLE "claim" ADD COLUMN     "isLetIn" BOOLEAN;

-- What the rulings on late claims say of it: cover for a cause of ours, or a return for nothing, came of letting it in; not
-- covered for such a cause came of not letting it in. A separate fault or later damage is not covered either way.
UPDATE "claim" SET "isLetIn" = ("ruling" <> 'not-covered')
WHERE "isLate" AND "ruling" IS NOT NULL
  AND ("ruling" <> 'not-covered' OR "cause" IN ('workmanship', 'fitted-part', 'weakened-by-original-damage', 'no-fault-found'));

-- A fault that was on no list was written on the job sheet by the word it is kept under.
UPDATE "job" SET "problem" = 'Something else' || SUBSTR("problem", 6)
FROM "claim" WHERE "claim"."jobId" = "job"."id" AND "claim"."symptom" = 'other' AND ("problem" = 'other' OR "problem" LIKE 'other. %');
