/*
 * How a unit's and a cover line's row is made from the records. It is the same SQL for one certificate (write-watch.ts), for
 * all of them (made-up jobs, lib/commands/bench) and for looking whether they agree (lib/commands/faults/half-states.ts).
 * A change here comes with a migration that writes every row anew.
 * The rows hold numbers, days, ids and the hand that worked, and nothing of a customer: removing a person's data leaves them.
 */

/** `given`: certificates of the numbers in $1, an array; `all`: every one. */
export type Which = 'given' | 'all';

const of = (column: string, which: Which) => (which === 'all' ? 'TRUE' : `${column} = ANY($1::text[])`);

/**
 * A claim ruled covered for good, asked of its row without a prefix. A partly covered one counts once the owner has looked at
 * it again (lib/warranty/stored-ruling.ts).
 */
export const IS_COVERED = `("ruling" = 'covered' OR ("ruling" = 'partly' AND "secondLookAt" IS NOT NULL))`;

/**
 * The end of a line: as its paper says, or, once days were held for a claim, counted anew by the database's own copy of
 * lib/warranty/rules/cover.ts (`cover_end`, compared with it in tests/returns/watch.test.ts), since a stay may move an end and
 * issue no paper.
 */
const isHeld = (number: string) =>
  `EXISTS (SELECT 1 FROM "held_interval" d WHERE d."certificateNumber" = ${number})`;
const countedEnd = (number: string, line: string, policy: string) =>
  `"cover_end"(${number}, ${policy}."heldRule", ${line}."startsOn", ${line}."term", ${line}."renewedUntil", ${line}."renewedFrom")`;
/** The last of the lines of the certificate in force, once days were held for it; nothing before that. */
const endInForce = (number: string, also = '') => `CASE WHEN ${isHeld(number)} THEN (
      SELECT MAX(${countedEnd(number, 'a', 'p')})
      FROM "certificate" n JOIN "policy_version" p ON p."id" = n."policyVersionId"
      JOIN "certificate_line" a ON a."certificateId" = n."id"
      WHERE n."number" = ${number} AND n."supersededAt" IS NULL ${also}
    ) END`;

const covered = (which: Which) => `
  SELECT "certificateNumber", "certificateId", "jobId", "number", "symptom", "openedOn", "openedAt", "cause", "costMinutes",
    "costPartsMinor" + "costPostageMinor" AS other, "costMinutes" + "costPartsMinor" + "costPostageMinor" IS NOT NULL AS costed
  FROM "claim" WHERE ${IS_COVERED} AND ${of('"certificateNumber"', which)}`;

/** Minutes stay apart for each claim, since each is rounded to money by itself (lib/warranty/rules/claim-cost.ts). */
const COSTS = `
  COUNT(*) AS claims, COUNT(*) FILTER (WHERE NOT costed) AS uncosted,
  ARRAY_AGG("costMinutes" ORDER BY "openedAt", "number") FILTER (WHERE costed) AS minutes,
  SUM(other) FILTER (WHERE costed) AS other`;

const COSTS_OR_NONE = `
  COALESCE(r.claims, 0)::int, COALESCE(r.uncosted, 0)::int, COALESCE(r.minutes, '{}'), COALESCE(r.other, 0)::int`;

const UNIT_COLUMNS = `"number", "issuedOn", "repairId", "modelId", "policyVersionId", "sheetId", "technicianId", "startsOn",
  "endsOn", "firstEndsOn", "returnedOn", "workOn", "cause", "claims", "uncosted", "costMinutes", "costOtherMinor", "lineCount"`;

/**
 * One row for each certificate, by the job it was first issued for: its hand is who worked longest, of two who worked
 * equally long the one who began. The first return ends its watch: where that was not put down to the work, no later one is
 * held against the hand. The limits of 1 here and below keep the server from joining every certificate to itself
 * for the one in thirty that was reissued.
 */
const units = (which: Which) => `
  WITH covered AS (${covered(which)}),
  returned AS (
    SELECT "certificateNumber", MIN("openedOn") AS "openedOn", (ARRAY_AGG("cause" ORDER BY "openedAt", "number"))[1] AS "cause", ${COSTS}
    FROM covered GROUP BY "certificateNumber"
  )
  SELECT o."number", o."issuedOn", j."repairId", j."modelId", o."policyVersionId", j."sheetId", h."userId", l."startsOn",
    COALESCE(${endInForce('o."number"')}, e."endsOn", o."endsOn"), o."endsOn",
    r."openedOn", CASE WHEN r."cause" IN ('workmanship', 'weakened-by-original-damage') THEN r."openedOn" END, r."cause",
    ${COSTS_OR_NONE}, k.many::int
  FROM "certificate" o
  JOIN "job" j ON j."id" = o."jobId"
  JOIN "certificate_line" l ON l."certificateId" = o."id" AND l."position" = 0
  LEFT JOIN LATERAL (
    SELECT n."endsOn" FROM "certificate" n
    WHERE o."supersededAt" IS NOT NULL AND n."number" = o."number" AND n."supersededAt" IS NULL LIMIT 1
  ) e ON TRUE
  LEFT JOIN LATERAL (
    SELECT w."userId" FROM "work_entry" w WHERE w."jobId" = o."jobId" AND w."takenBackAt" IS NULL
    GROUP BY w."userId" ORDER BY SUM(w."minutes") DESC, MIN(w."at"), w."userId" LIMIT 1
  ) h ON TRUE
  CROSS JOIN LATERAL (
    SELECT COUNT(DISTINCT a."key") AS many
    FROM "certificate" n JOIN "certificate_line" a ON a."certificateId" = n."id" WHERE n."number" = o."number"
  ) k
  LEFT JOIN returned r ON r."certificateNumber" = o."number"
  WHERE o."revision" = 1 AND ${of('o."number"', which)}`;

const LINE_COLUMNS = `"lineId", "number", "issuedOn", "position", "lotId", "hasTwin", "startsOn", "endsOn", "firstEndsOn",
  "returnedOn", "partOn", "claimNumber", "cause", "claims", "uncosted", "costMinutes", "costOtherMinor"`;

/**
 * One row for each cover line, as the certificate that first had it says, with its end by the one in force. A part that was
 * replaced under a claim keeps its line; the lot is that of the first piece, the one that came back.
 *
 * A covered claim touches the lines that its symptom may belong to and that still ran when it was opened; where the
 * longest of them had ended (a last day that was rolled, days of grace), it touches that one on its last day. A symptom of
 * no line touches all: somebody ruled it covered.
 *
 * Lines of one certificate often share their symptoms, so a claim put down to the part touches good parts too. It is held
 * against those touched whose part was fitted again on the claim's job, and against all of them only where none was. The first
 * claim that touches a line ends its watch: where that was put down to something else, no later one is held against it.
 */
const lines = (which: Which) => `
  WITH covered AS (${covered(which)}),
  matched AS (
    SELECT k.*, l."key",
      CASE WHEN ${isHeld('k."certificateNumber"')} THEN ${countedEnd('k."certificateNumber"', 'l', 'p')}
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
      (ARRAY_AGG("cause" ORDER BY "openedAt", "number"))[1] AS "cause", ${COSTS}
    FROM judged GROUP BY "certificateNumber", "key"
  )
  SELECT l."id", c."number", o."issuedOn", l."position", l."lotId",
    t."partId" IS NOT NULL AND COUNT(*) OVER (PARTITION BY c."number", t."partId") > 1, l."startsOn",
    COALESCE(${endInForce('c."number"', 'AND a."key" = l."key"')}, e."endsOn", l."endsOn"), l."endsOn",
    r."returnedOn", CASE WHEN r."isPart" THEN r."returnedOn" END, r."claimNumber", r."cause", ${COSTS_OR_NONE}
  FROM "certificate" c
  JOIN "certificate" o ON o."number" = c."number" AND o."revision" = 1
  JOIN "certificate_line" l ON l."certificateId" = c."id"
  LEFT JOIN LATERAL (
    SELECT e."endsOn" FROM "certificate" n JOIN "certificate_line" e ON e."certificateId" = n."id" AND e."key" = l."key"
    WHERE c."supersededAt" IS NOT NULL AND n."number" = c."number" AND n."supersededAt" IS NULL LIMIT 1
  ) e ON TRUE
  LEFT JOIN "lot" t ON t."id" = l."lotId"
  LEFT JOIN returned r ON r."certificateNumber" = c."number" AND r."key" = l."key"
  WHERE ${of('c."number"', which)} AND (c."revision" = 1 OR NOT EXISTS (
    SELECT 1 FROM "certificate" c0 JOIN "certificate_line" l0 ON l0."certificateId" = c0."id"
    WHERE c0."number" = c."number" AND c0."revision" < c."revision" AND l0."key" = l."key"))`;

/** Statements that take rows away and write them from the records again; lines go with their units. */
export function rewriteWatch(which: Which): readonly string[] {
  return [
    `DELETE FROM "unit_watch" WHERE ${of('"number"', which)}`,
    `INSERT INTO "unit_watch" (${UNIT_COLUMNS}) ${units(which)}`,
    `INSERT INTO "line_watch" (${LINE_COLUMNS}) ${lines(which)}`,
  ];
}

/** Selects as `which` every certificate with a row that is not what the records say, is missing or is too many. */
export const UNITS_ASTRAY = astray('unit_watch', UNIT_COLUMNS, units('all'));
export const LINES_ASTRAY = astray('line_watch', LINE_COLUMNS, lines('all'));

function astray(table: string, columns: string, records: string): string {
  const kept = `SELECT ${columns} FROM "${table}"`;
  return `SELECT DISTINCT "number" AS which FROM (
    (${kept} EXCEPT (${records})) UNION ALL ((SELECT * FROM (${records}) r (${columns})) EXCEPT ${kept})) a`;
}
