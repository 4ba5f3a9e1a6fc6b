-- A unit that was recorded as gone by mistake: its cover was counted from a day on which nothing began. Under most rules of days given
-- back a customer lost these days for a mistake of ours.
ALTER TABLE "held_interval" ADD COLUMN     "isByMistake" BOOLEAN NOT NULL DEFAULT false;

-- The last day of a cover line with the days given back, as lib/warranty/rules/cover.ts counts it.
CREATE OR REPLACE FUNCTION "cover_end"(number TEXT, rule TEXT, starts DATE, term TEXT, renewed DATE, since DATE) RETURNS DATE
LANGUAGE sql STABLE AS $$
  SELECT GREATEST(
    "paused_end"(number, rule, s."began", (starts + term::INTERVAL)::DATE + (s."began" - starts), FALSE),
    "paused_end"(number, rule, since, renewed, TRUE)
  )
  FROM (
    SELECT GREATEST(starts, MAX(h."toDay")) AS "began" FROM "held_interval" h
    WHERE h."certificateNumber" = number AND h."fromDay" = starts AND h."isByMistake"
  ) s
$$;
