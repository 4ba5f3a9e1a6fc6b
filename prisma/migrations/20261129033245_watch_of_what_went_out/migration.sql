-- Narrow rows that figures of returns stand on, so that no certificate is read again for a page (docs/measured.md).
-- CreateTable
CREATE TABLE "unit_watch" (
    "number" TEXT NOT NULL,
    "issuedOn" DATE NOT NULL,
    "repairId" TEXT NOT NULL,
    "modelId" TEXT NOT NULL,
    "policyVersionId" TEXT NOT NULL,
    "sheetId" TEXT NOT NULL,
    "technicianId" TEXT,
    "startsOn" DATE NOT NULL,
    "endsOn" DATE NOT NULL,
    "returnedOn" DATE,
    "workOn" DATE,
    "cause" TEXT,
    "claims" INTEGER NOT NULL,
    "uncosted" INTEGER NOT NULL,
    "costMinutes" INTEGER[],
    "costOtherMinor" INTEGER NOT NULL,
    "lineCount" INTEGER NOT NULL,

    CONSTRAINT "unit_watch_pkey" PRIMARY KEY ("number")
);

-- CreateTable
CREATE TABLE "line_watch" (
    "lineId" TEXT NOT NULL,
    "number" TEXT NOT NULL,
    "issuedOn" DATE NOT NULL,
    "position" INTEGER NOT NULL,
    "lotId" TEXT,
    "hasTwin" BOOLEAN NOT NULL,
    "startsOn" DATE NOT NULL,
    "endsOn" DATE NOT NULL,
    "returnedOn" DATE,
    "partOn" DATE,
    "claimNumber" TEXT,
    "cause" TEXT,
    "claims" INTEGER NOT NULL,
    "uncosted" INTEGER NOT NULL,
    "costMinutes" INTEGER[],
    "costOtherMinor" INTEGER NOT NULL,

    CONSTRAINT "line_watch_pkey" PRIMARY KEY ("lineId")
);

-- What the records say so far, as lib/returns/watch-sql.ts writes it from here on.
INSERT INTO "unit_watch" ("number", "issuedOn", "repairId", "modelId", "policyVersionId", "sheetId", "technicianId", "startsOn",
  "endsOn", "returnedOn", "workOn", "cause", "claims", "uncosted", "costMinutes", "costOtherMinor", "lineCount")
  WITH covered AS (
  SELECT "certificateNumber", "certificateId", "number", "symptom", "openedOn", "openedAt", "cause", "costMinutes",
    "costPartsMinor" + "costPostageMinor" AS other, "costMinutes" + "costPartsMinor" + "costPostageMinor" IS NOT NULL AS costed
  FROM "claim" WHERE ("ruling" = 'covered' OR ("ruling" = 'partly' AND "secondLookAt" IS NOT NULL))),
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
    COALESCE(e."endsOn", o."endsOn"), r."openedOn", r."workOn", r."cause",
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
  WHERE o."revision" = 1;

INSERT INTO "line_watch" ("lineId", "number", "issuedOn", "position", "lotId", "hasTwin", "startsOn", "endsOn", "returnedOn",
  "partOn", "claimNumber", "cause", "claims", "uncosted", "costMinutes", "costOtherMinor")
  WITH covered AS (
  SELECT "certificateNumber", "certificateId", "number", "symptom", "openedOn", "openedAt", "cause", "costMinutes",
    "costPartsMinor" + "costPostageMinor" AS other, "costMinutes" + "costPartsMinor" + "costPostageMinor" IS NOT NULL AS costed
  FROM "claim" WHERE ("ruling" = 'covered' OR ("ruling" = 'partly' AND "secondLookAt" IS NOT NULL))),
  matched AS (
    SELECT k.*, l."key", l."endsOn",
      LOWER(TRIM(k."symptom")) = 'other' OR CARDINALITY(l."symptoms") = 0
        OR EXISTS (SELECT 1 FROM UNNEST(l."symptoms") s WHERE LOWER(TRIM(s)) = LOWER(TRIM(k."symptom"))) AS "isOf"
    FROM covered k JOIN "certificate_line" l ON l."certificateId" = k."certificateId"
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
    COALESCE(e."endsOn", l."endsOn"), r."returnedOn", r."partOn", r."claimNumber", r."cause",
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
  WHERE (c."revision" = 1 OR NOT EXISTS (
    SELECT 1 FROM "certificate" c0 JOIN "certificate_line" l0 ON l0."certificateId" = c0."id"
    WHERE c0."number" = c."number" AND c0."revision" < c."revision" AND l0."key" = l."key"));

-- CreateIndex
CREATE INDEX "unit_watch_issuedOn_idx" ON "unit_watch"("issuedOn");

-- CreateIndex
CREATE INDEX "unit_watch_repairId_issuedOn_number_idx" ON "unit_watch"("repairId", "issuedOn" DESC, "number");

-- CreateIndex
CREATE INDEX "unit_watch_modelId_issuedOn_number_idx" ON "unit_watch"("modelId", "issuedOn" DESC, "number");

-- CreateIndex
CREATE INDEX "unit_watch_policyVersionId_issuedOn_number_idx" ON "unit_watch"("policyVersionId", "issuedOn" DESC, "number");

-- CreateIndex
CREATE INDEX "unit_watch_technicianId_issuedOn_number_idx" ON "unit_watch"("technicianId", "issuedOn" DESC, "number");

-- CreateIndex
CREATE INDEX "line_watch_number_idx" ON "line_watch"("number");

-- CreateIndex
CREATE INDEX "line_watch_issuedOn_number_position_lineId_idx" ON "line_watch"("issuedOn" DESC, "number", "position", "lineId");

-- CreateIndex
CREATE INDEX "line_watch_lotId_issuedOn_number_position_lineId_idx" ON "line_watch"("lotId", "issuedOn" DESC, "number", "position", "lineId");

-- AddForeignKey
ALTER TABLE "line_watch" ADD CONSTRAINT "line_watch_lineId_fkey" FOREIGN KEY ("lineId") REFERENCES "certificate_line"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "line_watch" ADD CONSTRAINT "line_watch_number_fkey" FOREIGN KEY ("number") REFERENCES "unit_watch"("number") ON DELETE CASCADE ON UPDATE CASCADE;

-- Returns are a few lines in a hundred, and so are two pieces of one part: readings of them alone need no others.
CREATE INDEX "line_watch_returned" ON "line_watch"("issuedOn" DESC, "number", "position", "lineId") WHERE "returnedOn" IS NOT NULL;
CREATE INDEX "line_watch_twins" ON "line_watch"("lotId", "number") WHERE "hasTwin";

ANALYZE "unit_watch", "line_watch";
