import { db } from '@/lib/db/client';
import { Prisma } from '@/lib/db/generated/client';
import { type CoverClock, IS_BACK, IS_WATCHED, IS_YOUNG, planned, unitRows } from './cover-sql';
import { unitsWhere } from './groupings';
import type { VersionCount } from './rules/taught';
import { IS_COVERED } from './watch-sql';

/**
 * Units of a repair by the version of the sheet they were proved on, the oldest first; those with shorter cover are in no count. One
 * that was proved on it beside the repair of its job counts too, and came back for it where a covered claim is proved on it again, or
 * taught a check of it. What failed in such a unit otherwise is no return of this repair, nor is work that its
 * customer paid for beside the claim.
 */
export function countByVersion(repairId: string, clock: CoverClock): Promise<VersionCount[]> {
  return db.$queryRaw<VersionCount[]>`
    WITH ${unitRows(clock, unitsWhere({ of: { grouping: 'repair', id: repairId } }))},
    beside AS (
      SELECT b."sheetId", w."startsOn", w."endsOn", w."firstEndsOn", ${planned(clock)} AS planned, (
        SELECT MIN(k."openedOn") FROM (SELECT * FROM "claim" WHERE ${Prisma.raw(IS_COVERED)}) k
        WHERE k."certificateNumber" = w."number" AND (
          EXISTS (
            SELECT FROM "sheet_beside" a JOIN "check_sheet" n ON n."id" = a."sheetId"
            WHERE a."jobId" = k."jobId" AND NOT a."isByPrice" AND n."repairId" = ${repairId})
          OR EXISTS (
            SELECT FROM "check_item" c JOIN "check_sheet" n ON n."id" = c."sheetId"
            WHERE c."lesson" = k."number" AND n."repairId" = ${repairId}))
      ) AS "backOn"
      FROM "sheet_beside" b JOIN "check_sheet" s ON s."id" = b."sheetId"
      JOIN "certificate" o ON o."jobId" = b."jobId" AND o."revision" = 1
      JOIN "unit_watch" w ON w."number" = o."number"
      WHERE s."repairId" = ${repairId}
    ),
    proved AS (
      SELECT "sheetId", "startsOn", "firstEndsOn", planned, days, "isReturned" FROM unit
      UNION ALL
      SELECT "sheetId", "startsOn", "firstEndsOn", planned, GREATEST(0, LEAST(${clock.today}::date, "endsOn", "backOn") - "startsOn"), "backOn" IS NOT NULL FROM beside
    )
    SELECT s."version", (COUNT(*) FILTER (WHERE ${IS_WATCHED}))::int AS watched,
      (COUNT(*) FILTER (WHERE ${IS_BACK}))::int AS returned, (COUNT(*) FILTER (WHERE ${IS_YOUNG}))::int AS young
    FROM proved p JOIN "check_sheet" s ON s."id" = p."sheetId"
    GROUP BY s."version" ORDER BY s."version"`;
}
