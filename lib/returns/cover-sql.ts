/*
 * Words of this room.
 * Cover line: one piece of work, or one part, with its own term; counted once whatever the revision of its certificate.
 * Unit: one certificate with all of its lines, so that a recorder with three lines that comes back has come back once.
 * Return: a claim ruled covered, at least partly; a lot answers for those put down to the part, a hand for those put down
 * to the work, and everything else for all of them. Days at risk: from the start of cover to the return, the end or today.
 * Without a recorded cost: a return whose claim is not sent back yet; it is said, never taken as nought.
 */
import type { Day } from '@/lib/calendar/day';
import { Prisma } from '@/lib/db/generated/client';

export type CoverClock = { today: Day; labourRateMinor: number };

/**
 * Claims ruled covered for good, with what they cost. A partly covered one counts once the owner has looked at it again
 * (lib/warranty/stored-ruling.ts); minutes are rounded half up once, as in lib/warranty/rules/claim-cost.ts.
 */
export function coveredClaims({ labourRateMinor }: CoverClock): Prisma.Sql {
  return Prisma.sql`
    SELECT cl."certificateNumber", cl."certificateId", cl."number", cl."symptom", cl."openedOn", cl."openedAt",
      cl."cause",
      ((cl."costMinutes"::bigint * ${labourRateMinor}::bigint + 30) / 60 + cl."costPartsMinor" + cl."costPostageMinor")
        AS cost
    FROM "claim" cl
    WHERE cl."ruling" = 'covered' OR (cl."ruling" = 'partly' AND cl."secondLookAt" IS NOT NULL)`;
}

/**
 * `unit`: one row for each certificate, by the job it was first issued for. It is at risk from the start of its first
 * line to its first return, to the end of its longest line, or to today.
 *
 * What narrows it is asked inside, on the certificate as first issued and its job (`o` and `j`): outside, the server would
 * read every certificate first. The limits of 1 here and below keep the server from joining every certificate to itself
 * for the one in thirty that was reissued.
 */
export function unitRows(clock: CoverClock, where: Prisma.Sql = Prisma.sql`TRUE`): Prisma.Sql {
  const { today } = clock;
  return Prisma.sql`
    covered AS (${coveredClaims(clock)}),
    returned AS (
      SELECT "certificateNumber", MIN("openedOn") AS "openedOn",
        (ARRAY_AGG("cause" ORDER BY "openedAt", "number"))[1] AS "cause",
        MIN("openedOn") FILTER (WHERE "cause" IN ('workmanship', 'weakened-by-original-damage')) AS "workOn",
        COUNT(*) AS claims, SUM(cost) AS cost, COUNT(*) FILTER (WHERE cost IS NULL) AS uncosted
      FROM covered GROUP BY "certificateNumber"
    ),
    unit AS (
      SELECT o."number", o."issuedOn", o."policyVersionId", j."id" AS "jobId", j."repairId", j."modelId", j."sheetId",
        l."startsOn", r."openedOn" IS NOT NULL AS "isReturned", r."cause", r.claims, r.cost, r.uncosted,
        GREATEST(0, LEAST(${today}::date, COALESCE(e."endsOn", o."endsOn"), r."openedOn") - l."startsOn") AS days,
        GREATEST(0, LEAST(COALESCE(e."endsOn", o."endsOn"), r."workOn") - l."startsOn") AS "workDays", r."workOn" IS NOT NULL AS "isWork"
      FROM "certificate" o
      JOIN "job" j ON j."id" = o."jobId"
      LEFT JOIN LATERAL (
        SELECT n."endsOn" FROM "certificate" n
        WHERE o."supersededAt" IS NOT NULL AND n."number" = o."number" AND n."supersededAt" IS NULL LIMIT 1
      ) e ON TRUE
      JOIN "certificate_line" l ON l."certificateId" = o."id" AND l."position" = 0
      LEFT JOIN returned r ON r."certificateNumber" = o."number"
      WHERE o."revision" = 1 AND ${where}
    )`;
}

/**
 * `line`: one row for each cover line, as the certificate that first had it says, with its end by the one in force.
 * A part that was replaced under a claim keeps its line; the lot is that of the first piece, the one that came back.
 *
 * A covered claim touches the lines that its symptom may belong to and that still ran when it was opened; where the
 * longest of them had ended (a last day that was rolled, days of grace), it touches that one on its last day. A symptom of
 * no line touches all: somebody ruled it covered.
 */
export function lineRows(clock: CoverClock, where: Prisma.Sql = Prisma.sql`TRUE`): Prisma.Sql {
  const { today } = clock;
  return Prisma.sql`
    covered AS (${coveredClaims(clock)}),
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
        (ARRAY_AGG("cause" ORDER BY "openedAt", "number"))[1] AS "cause",
        (ARRAY_AGG("number" ORDER BY "openedAt", "number"))[1] AS "claimNumber",
        MIN(LEAST("openedOn", "endsOn")) FILTER (WHERE "cause" = 'fitted-part') AS "partOn",
        COUNT(*) AS claims, SUM(cost) AS cost, COUNT(*) FILTER (WHERE cost IS NULL) AS uncosted
      FROM touched GROUP BY "certificateNumber", "key"
    ),
    line AS (
      SELECT c."number", c."policyVersionId", c."issuedOn", c."jobId", l."key", l."position", l."kind", l."description",
        l."lotId", l."startsOn", r."returnedOn", r."partOn", r."claimNumber", r."cause", r.claims, r.cost, r.uncosted,
        LEAST(${today}::date, COALESCE(e."endsOn", l."endsOn"), r."returnedOn") AS "observedUntil",
        GREATEST(0, LEAST(${today}::date, COALESCE(e."endsOn", l."endsOn"), r."returnedOn") - l."startsOn") AS days
      FROM "certificate" c
      JOIN "certificate_line" l ON l."certificateId" = c."id"
      LEFT JOIN LATERAL (
        SELECT e."endsOn" FROM "certificate" n JOIN "certificate_line" e ON e."certificateId" = n."id" AND e."key" = l."key"
        WHERE c."supersededAt" IS NOT NULL AND n."number" = c."number" AND n."supersededAt" IS NULL LIMIT 1
      ) e ON TRUE
      LEFT JOIN returned r ON r."certificateNumber" = c."number" AND r."key" = l."key"
      WHERE ${where} AND (c."revision" = 1 OR NOT EXISTS (
        SELECT 1 FROM "certificate" c0 JOIN "certificate_line" l0 ON l0."certificateId" = c0."id"
        WHERE c0."number" = c."number" AND c0."revision" < c."revision" AND l0."key" = l."key"))
    )`;
}

/** `hand`: who worked longest on each job; of two who worked equally long, the one who began. */
export const HANDS = Prisma.sql`
  hand AS (
    SELECT DISTINCT ON ("jobId") "jobId", "userId" FROM (
      SELECT "jobId", "userId", SUM("minutes") AS minutes, MIN("at") AS since FROM "work_entry" GROUP BY "jobId", "userId"
    ) w ORDER BY "jobId", minutes DESC, since
  )`;
