-- The last day of a cover line with the days given back, as lib/warranty/rules/cover.ts counts it: a stay after which no next
-- revision was issued moves the end and leaves the paper as it is. Stays that touch are one stretch; the hand-in day is not held.
CREATE FUNCTION "cover_end"(number TEXT, rule TEXT, starts DATE, term TEXT, renewed DATE) RETURNS DATE
LANGUAGE plpgsql STABLE AS $$
DECLARE
  moved DATE := (starts + term::INTERVAL)::DATE;
  stretch RECORD;
BEGIN
  IF rule IN ('whole-days', 'from-seven-days') THEN
    FOR stretch IN
      SELECT LOWER(s.r) AS "from", UPPER(s.r) - LOWER(s.r) AS days
      FROM (
        SELECT UNNEST(RANGE_AGG(DATERANGE(GREATEST(h."fromDay", starts), h."toDay"))) AS r
        FROM "held_interval" h
        WHERE h."certificateNumber" = number AND h."toDay" > GREATEST(h."fromDay", starts)
      ) s ORDER BY 1
    LOOP
      IF stretch."from" <= moved AND (rule = 'whole-days' OR stretch.days >= 7) THEN
        moved := moved + stretch.days;
      END IF;
    END LOOP;
  END IF;
  RETURN GREATEST(moved, renewed);
END $$;

-- Rows that figures of returns stand on, written anew where days were held.
DELETE FROM "unit_watch" WHERE "number" = ANY(ARRAY(SELECT DISTINCT "certificateNumber" FROM "held_interval"));

INSERT INTO "unit_watch" ("number", "issuedOn", "repairId", "modelId", "policyVersionId", "sheetId", "technicianId", "startsOn",
  "endsOn", "returnedOn", "workOn", "cause", "claims", "uncosted", "costMinutes", "costOtherMinor", "lineCount")
  WITH covered AS (
  SELECT "certificateNumber", "certificateId", "number", "symptom", "openedOn", "openedAt", "cause", "costMinutes",
    "costPartsMinor" + "costPostageMinor" AS other, "costMinutes" + "costPartsMinor" + "costPostageMinor" IS NOT NULL AS costed
  FROM "claim" WHERE ("ruling" = 'covered' OR ("ruling" = 'partly' AND "secondLookAt" IS NOT NULL)) AND "certificateNumber" = ANY(ARRAY(SELECT DISTINCT "certificateNumber" FROM "held_interval"))),
  returned AS (
    SELECT "certificateNumber", MIN("openedOn") AS "openedOn",
      MIN("openedOn") FILTER (WHERE "cause" IN ('workmanship', 'weakened-by-original-damage')) AS "workOn",
      (ARRAY_AGG("cause" ORDER BY "openedAt", "number"))[1] AS "cause",
  COUNT(*) AS claims, COUNT(*) FILTER (WHERE NOT costed) AS uncosted,
  ARRAY_AGG("costMinutes" ORDER BY "openedAt", "number") FILTER (WHERE costed) AS minutes,
  SUM(other) FILTER (WHERE costed) AS other
    FROM covered GROUP BY "certificateNumber"
  )
  SELECT o."number", o."issuedOn", j."repairId", j."modelId", o."policyVersionId", j."sheetId", h."userId", l."startsOn",
    COALESCE(CASE WHEN EXISTS (SELECT 1 FROM "held_interval" d WHERE d."certificateNumber" = o."number") THEN (
      SELECT MAX("cover_end"(o."number", p."heldRule", a."startsOn", a."term", a."renewedUntil"))
      FROM "certificate" n JOIN "policy_version" p ON p."id" = n."policyVersionId"
      JOIN "certificate_line" a ON a."certificateId" = n."id"
      WHERE n."number" = o."number" AND n."supersededAt" IS NULL
    ) END, e."endsOn", o."endsOn"),
    r."openedOn", r."workOn", r."cause",
  COALESCE(r.claims, 0)::int, COALESCE(r.uncosted, 0)::int, COALESCE(r.minutes, '{}'), COALESCE(r.other, 0)::int, k.many::int
  FROM "certificate" o
  JOIN "job" j ON j."id" = o."jobId"
  JOIN "certificate_line" l ON l."certificateId" = o."id" AND l."position" = 0
  LEFT JOIN LATERAL (
    SELECT n."endsOn" FROM "certificate" n
    WHERE o."supersededAt" IS NOT NULL AND n."number" = o."number" AND n."supersededAt" IS NULL LIMIT 1
  ) e ON TRUE
  LEFT JOIN LATERAL (
    SELECT w."userId" FROM "work_entry" w WHERE w."jobId" = o."jobId"
    GROUP BY w."userId" ORDER BY SUM(w."minutes") DESC, MIN(w."at"), w."userId" LIMIT 1
  ) h ON TRUE
  CROSS JOIN LATERAL (
    SELECT COUNT(DISTINCT a."key") AS many
    FROM "certificate" n JOIN "certificate_line" a ON a."certificateId" = n."id" WHERE n."number" = o."number"
  ) k
  LEFT JOIN returned r ON r."certificateNumber" = o."number"
  WHERE o."revision" = 1 AND o."number" = ANY(ARRAY(SELECT DISTINCT "certificateNumber" FROM "held_interval"));

INSERT INTO "line_watch" ("lineId", "number", "issuedOn", "position", "lotId", "hasTwin", "startsOn", "endsOn", "returnedOn",
  "partOn", "claimNumber", "cause", "claims", "uncosted", "costMinutes", "costOtherMinor")
  WITH covered AS (
  SELECT "certificateNumber", "certificateId", "number", "symptom", "openedOn", "openedAt", "cause", "costMinutes",
    "costPartsMinor" + "costPostageMinor" AS other, "costMinutes" + "costPartsMinor" + "costPostageMinor" IS NOT NULL AS costed
  FROM "claim" WHERE ("ruling" = 'covered' OR ("ruling" = 'partly' AND "secondLookAt" IS NOT NULL)) AND "certificateNumber" = ANY(ARRAY(SELECT DISTINCT "certificateNumber" FROM "held_interval"))),
  matched AS (
    SELECT k.*, l."key",
      CASE WHEN EXISTS (SELECT 1 FROM "held_interval" d WHERE d."certificateNumber" = k."certificateNumber") THEN "cover_end"(k."certificateNumber", p."heldRule", l."startsOn", l."term", l."renewedUntil")
        ELSE l."endsOn" END AS "endsOn",
      LOWER(TRIM(k."symptom")) = 'other' OR CARDINALITY(l."symptoms") = 0
        OR EXISTS (SELECT 1 FROM UNNEST(l."symptoms") s WHERE LOWER(TRIM(s)) = LOWER(TRIM(k."symptom"))) AS "isOf"
    FROM covered k JOIN "certificate_line" l ON l."certificateId" = k."certificateId"
    JOIN "certificate" b ON b."id" = k."certificateId" JOIN "policy_version" p ON p."id" = b."policyVersionId"
  ),
  relevant AS (
    SELECT * FROM (SELECT *, BOOL_OR("isOf") OVER (PARTITION BY "number") AS "isAnyOf" FROM matched) m
    WHERE "isOf" OR NOT "isAnyOf"
  ),
  touched AS (
    SELECT * FROM (SELECT *, MAX("endsOn") OVER (PARTITION BY "number") AS "lastDay" FROM relevant) m
    WHERE "endsOn" >= LEAST("openedOn", "lastDay")
  ),
  returned AS (
    SELECT "certificateNumber", "key", MIN(LEAST("openedOn", "endsOn")) AS "returnedOn",
      MIN(LEAST("openedOn", "endsOn")) FILTER (WHERE "cause" = 'fitted-part') AS "partOn",
      (ARRAY_AGG("number" ORDER BY "openedAt", "number"))[1] AS "claimNumber",
      (ARRAY_AGG("cause" ORDER BY "openedAt", "number"))[1] AS "cause",
  COUNT(*) AS claims, COUNT(*) FILTER (WHERE NOT costed) AS uncosted,
  ARRAY_AGG("costMinutes" ORDER BY "openedAt", "number") FILTER (WHERE costed) AS minutes,
  SUM(other) FILTER (WHERE costed) AS other
    FROM touched GROUP BY "certificateNumber", "key"
  )
  SELECT l."id", c."number", o."issuedOn", l."position", l."lotId",
    t."partId" IS NOT NULL AND COUNT(*) OVER (PARTITION BY c."number", t."partId") > 1, l."startsOn",
    COALESCE(CASE WHEN EXISTS (SELECT 1 FROM "held_interval" d WHERE d."certificateNumber" = c."number") THEN (
      SELECT MAX("cover_end"(c."number", p."heldRule", a."startsOn", a."term", a."renewedUntil"))
      FROM "certificate" n JOIN "policy_version" p ON p."id" = n."policyVersionId"
      JOIN "certificate_line" a ON a."certificateId" = n."id"
      WHERE n."number" = c."number" AND n."supersededAt" IS NULL AND a."key" = l."key"
    ) END, e."endsOn", l."endsOn"),
    r."returnedOn", r."partOn", r."claimNumber", r."cause",
  COALESCE(r.claims, 0)::int, COALESCE(r.uncosted, 0)::int, COALESCE(r.minutes, '{}'), COALESCE(r.other, 0)::int
  FROM "certificate" c
  JOIN "certificate" o ON o."number" = c."number" AND o."revision" = 1
  JOIN "certificate_line" l ON l."certificateId" = c."id"
  LEFT JOIN LATERAL (
    SELECT e."endsOn" FROM "certificate" n JOIN "certificate_line" e ON e."certificateId" = n."id" AND e."key" = l."key"
    WHERE c."supersededAt" IS NOT NULL AND n."number" = c."number" AND n."supersededAt" IS NULL LIMIT 1
  ) e ON TRUE
  LEFT JOIN "lot" t ON t."id" = l."lotId"
  LEFT JOIN returned r ON r."certificateNumber" = c."number" AND r."key" = l."key"
  WHERE c."number" = ANY(ARRAY(SELECT DISTINCT "certificateNumber" FROM "held_interval")) AND (c."revision" = 1 OR NOT EXISTS (
    SELECT 1 FROM "certificate" c0 JOIN "certificate_line" l0 ON l0."certificateId" = c0."id"
    WHERE c0."number" = c."number" AND c0."revision" < c."revision" AND l0."key" = l."key"));
