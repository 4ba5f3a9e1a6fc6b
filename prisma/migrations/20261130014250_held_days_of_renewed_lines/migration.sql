-- A renewed minimum is moved by days held since it was counted, as a term is. Until now only a next revision moved it, and a stay
-- that issued none, or a parcel that came back and left again, gave nothing back to it.
ALTER TABLE "certificate_line" ADD COLUMN     "renewedFrom" DATE;

-- What a revision states was counted to the return of the claim it was issued for. Issued lines are kept by a trigger.
ALTER TABLE "certificate_line" DISABLE TRIGGER "certificate_line_kept";
UPDATE "certificate_line" l SET "renewedFrom" = h."toDay"
FROM "certificate" c JOIN "claim" k ON k."jobId" = c."jobId" JOIN "held_interval" h ON h."claimNumber" = k."number"
WHERE c."id" = l."certificateId" AND l."renewedUntil" IS NOT NULL;
ALTER TABLE "certificate_line" ENABLE TRIGGER "certificate_line_kept";

-- An end moved by the stays of a certificate since a day, as pausedEnd of lib/warranty/rules/held.ts; where `onward`, a stretch
-- that goes on past that day moves it by its whole length under any rule, as renewedEnd of cover.ts has it.
CREATE FUNCTION "paused_end"(number TEXT, rule TEXT, since DATE, ends DATE, onward BOOLEAN) RETURNS DATE
LANGUAGE plpgsql STABLE AS $$
DECLARE
  moved DATE := ends;
  stretch RECORD;
BEGIN
  IF ends IS NULL OR since IS NULL OR NOT (onward OR rule IN ('whole-days', 'from-seven-days')) THEN RETURN ends; END IF;
  FOR stretch IN
    SELECT LOWER(s.r) AS "from", UPPER(s.r) - LOWER(s.r) AS days
    FROM (
      SELECT UNNEST(RANGE_AGG(DATERANGE(GREATEST(h."fromDay", since), h."toDay"))) AS r
      FROM "held_interval" h
      WHERE h."certificateNumber" = number AND h."toDay" > GREATEST(h."fromDay", since)
    ) s ORDER BY 1
  LOOP
    IF stretch."from" <= moved AND (
      (onward AND stretch."from" = since) OR rule = 'whole-days' OR (rule = 'from-seven-days' AND stretch.days >= 7)
    ) THEN
      moved := moved + stretch.days;
    END IF;
  END LOOP;
  RETURN moved;
END $$;

-- The last day of a cover line with the days given back, as lib/warranty/rules/cover.ts counts it.
DROP FUNCTION "cover_end"(TEXT, TEXT, DATE, TEXT, DATE);
CREATE FUNCTION "cover_end"(number TEXT, rule TEXT, starts DATE, term TEXT, renewed DATE, since DATE) RETURNS DATE
LANGUAGE sql STABLE AS $$
  SELECT GREATEST(
    "paused_end"(number, rule, starts, (starts + term::INTERVAL)::DATE, FALSE),
    "paused_end"(number, rule, since, renewed, TRUE)
  )
$$;

-- Rows that figures of returns stand on, written anew where a line was renewed.
DELETE FROM "unit_watch" WHERE "number" = ANY(ARRAY(
    SELECT c."number" FROM "certificate_line" l JOIN "certificate" c ON c."id" = l."certificateId" WHERE l."renewedUntil" IS NOT NULL));

INSERT INTO "unit_watch" ("number", "issuedOn", "repairId", "modelId", "policyVersionId", "sheetId", "technicianId", "startsOn",
  "endsOn", "firstEndsOn", "returnedOn", "workOn", "cause", "claims", "uncosted", "costMinutes", "costOtherMinor", "lineCount") 
  WITH covered AS (
  SELECT "certificateNumber", "certificateId", "jobId", "number", "symptom", "openedOn", "openedAt", "cause", "costMinutes",
    "costPartsMinor" + "costPostageMinor" AS other, "costMinutes" + "costPartsMinor" + "costPostageMinor" IS NOT NULL AS costed
  FROM "claim" WHERE ("ruling" = 'covered' OR ("ruling" = 'partly' AND "secondLookAt" IS NOT NULL)) AND "certificateNumber" = ANY(ARRAY(
    SELECT c."number" FROM "certificate_line" l JOIN "certificate" c ON c."id" = l."certificateId" WHERE l."renewedUntil" IS NOT NULL))),
  returned AS (
    SELECT "certificateNumber", MIN("openedOn") AS "openedOn", (ARRAY_AGG("cause" ORDER BY "openedAt", "number"))[1] AS "cause", 
  COUNT(*) AS claims, COUNT(*) FILTER (WHERE NOT costed) AS uncosted,
  ARRAY_AGG("costMinutes" ORDER BY "openedAt", "number") FILTER (WHERE costed) AS minutes,
  SUM(other) FILTER (WHERE costed) AS other
    FROM covered GROUP BY "certificateNumber"
  )
  SELECT o."number", o."issuedOn", j."repairId", j."modelId", o."policyVersionId", j."sheetId", h."userId", l."startsOn",
    COALESCE(CASE WHEN EXISTS (SELECT 1 FROM "held_interval" d WHERE d."certificateNumber" = o."number") THEN (
      SELECT MAX("cover_end"(o."number", p."heldRule", a."startsOn", a."term", a."renewedUntil", a."renewedFrom"))
      FROM "certificate" n JOIN "policy_version" p ON p."id" = n."policyVersionId"
      JOIN "certificate_line" a ON a."certificateId" = n."id"
      WHERE n."number" = o."number" AND n."supersededAt" IS NULL 
    ) END, e."endsOn", o."endsOn"), o."endsOn",
    r."openedOn", CASE WHEN r."cause" IN ('workmanship', 'weakened-by-original-damage') THEN r."openedOn" END, r."cause",
    
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
  WHERE o."revision" = 1 AND o."number" = ANY(ARRAY(
    SELECT c."number" FROM "certificate_line" l JOIN "certificate" c ON c."id" = l."certificateId" WHERE l."renewedUntil" IS NOT NULL));

INSERT INTO "line_watch" ("lineId", "number", "issuedOn", "position", "lotId", "hasTwin", "startsOn", "endsOn", "firstEndsOn",
  "returnedOn", "partOn", "claimNumber", "cause", "claims", "uncosted", "costMinutes", "costOtherMinor") 
  WITH covered AS (
  SELECT "certificateNumber", "certificateId", "jobId", "number", "symptom", "openedOn", "openedAt", "cause", "costMinutes",
    "costPartsMinor" + "costPostageMinor" AS other, "costMinutes" + "costPartsMinor" + "costPostageMinor" IS NOT NULL AS costed
  FROM "claim" WHERE ("ruling" = 'covered' OR ("ruling" = 'partly' AND "secondLookAt" IS NOT NULL)) AND "certificateNumber" = ANY(ARRAY(
    SELECT c."number" FROM "certificate_line" l JOIN "certificate" c ON c."id" = l."certificateId" WHERE l."renewedUntil" IS NOT NULL))),
  matched AS (
    SELECT k.*, l."key",
      CASE WHEN EXISTS (SELECT 1 FROM "held_interval" d WHERE d."certificateNumber" = k."certificateNumber") THEN "cover_end"(k."certificateNumber", p."heldRule", l."startsOn", l."term", l."renewedUntil", l."renewedFrom")
        ELSE l."endsOn" END AS "endsOn",
      LOWER(TRIM(k."symptom")) = 'other' OR CARDINALITY(l."symptoms") = 0
        OR EXISTS (SELECT 1 FROM UNNEST(l."symptoms") s WHERE LOWER(TRIM(s)) = LOWER(TRIM(k."symptom"))) AS "isOf",
      EXISTS (
        SELECT 1 FROM "part_use" u JOIN "lot" n ON n."id" = u."lotId" JOIN "lot" f ON f."partId" = n."partId"
        WHERE u."jobId" = k."jobId" AND f."id" = l."lotId"
      ) AS "isFitted"
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
  judged AS (
    SELECT *, "cause" = 'fitted-part' AND ("isFitted" OR NOT BOOL_OR("isFitted") OVER (PARTITION BY "number")) AS "isPart"
    FROM touched
  ),
  returned AS (
    SELECT "certificateNumber", "key", MIN(LEAST("openedOn", "endsOn")) AS "returnedOn",
      (ARRAY_AGG("isPart" ORDER BY "openedAt", "number"))[1] AS "isPart",
      (ARRAY_AGG("number" ORDER BY "openedAt", "number"))[1] AS "claimNumber",
      (ARRAY_AGG("cause" ORDER BY "openedAt", "number"))[1] AS "cause", 
  COUNT(*) AS claims, COUNT(*) FILTER (WHERE NOT costed) AS uncosted,
  ARRAY_AGG("costMinutes" ORDER BY "openedAt", "number") FILTER (WHERE costed) AS minutes,
  SUM(other) FILTER (WHERE costed) AS other
    FROM judged GROUP BY "certificateNumber", "key"
  )
  SELECT l."id", c."number", o."issuedOn", l."position", l."lotId",
    t."partId" IS NOT NULL AND COUNT(*) OVER (PARTITION BY c."number", t."partId") > 1, l."startsOn",
    COALESCE(CASE WHEN EXISTS (SELECT 1 FROM "held_interval" d WHERE d."certificateNumber" = c."number") THEN (
      SELECT MAX("cover_end"(c."number", p."heldRule", a."startsOn", a."term", a."renewedUntil", a."renewedFrom"))
      FROM "certificate" n JOIN "policy_version" p ON p."id" = n."policyVersionId"
      JOIN "certificate_line" a ON a."certificateId" = n."id"
      WHERE n."number" = c."number" AND n."supersededAt" IS NULL AND a."key" = l."key"
    ) END, e."endsOn", l."endsOn"), l."endsOn",
    r."returnedOn", CASE WHEN r."isPart" THEN r."returnedOn" END, r."claimNumber", r."cause", 
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
  WHERE c."number" = ANY(ARRAY(
    SELECT c."number" FROM "certificate_line" l JOIN "certificate" c ON c."id" = l."certificateId" WHERE l."renewedUntil" IS NOT NULL)) AND (c."revision" = 1 OR NOT EXISTS (
    SELECT 1 FROM "certificate" c0 JOIN "certificate_line" l0 ON l0."certificateId" = c0."id"
    WHERE c0."number" = c."number" AND c0."revision" < c."revision" AND l0."key" = l."key"));
