import { db } from '@/lib/db/client';
import { Prisma } from '@/lib/db/generated/client';
import { type CoverClock, coveredClaims, unitRows } from './cover-sql';
import type { EndedCover } from './rules/year';

/** The last 365 days of one repair. Money in minor units. */
export type YearOfRepair = {
  repairId: string;
  /** units sent back in the year */
  sent: number;
  /** claims opened in the year and ruled covered */
  claims: number;
  spentMinor: number;
  /** of the claims, those whose cost is not recorded yet */
  uncosted: number;
  /** units whose first cover ran out in the year, by how long it was, with all of their own claims */
  ended: EndedCover[];
};

/**
 * Units sent back, money spent on covered claims, and covers that ran out in the last 365 days, by repair; of one alone where it
 * is given.
 */
export async function yearByRepair(clock: CoverClock, repairId?: string): Promise<YearOfRepair[]> {
  const since = Prisma.sql`${clock.today}::date - 365`;
  return db.$queryRaw<YearOfRepair[]>`
    WITH sent AS (
      SELECT w."repairId", COUNT(*) AS sent FROM "unit_watch" w
      WHERE w."issuedOn" > ${since} AND ${ofRepair(repairId)} GROUP BY w."repairId"
    ),
    spent AS (
      SELECT k."repairId", COUNT(*) AS claims, SUM(k.cost) AS cost, COUNT(*) FILTER (WHERE k.cost IS NULL) AS uncosted
      FROM (${coveredClaims(clock, Prisma.sql`k."openedOn" > ${since} AND ${ofRepair(repairId)}`)}) k GROUP BY k."repairId"
    ),
    ${unitRows(clock, Prisma.sql`w."firstEndsOn" > ${since} AND w."firstEndsOn" <= ${clock.today}::date AND ${ofRepair(repairId)}`)},
    ended AS (
      SELECT "repairId", JSON_AGG(JSON_BUILD_OBJECT('days', long, 'units', units, 'spentMinor', cost, 'uncosted', uncosted)) AS covers
      FROM (
        SELECT "repairId", "firstEndsOn" - "startsOn" AS long, COUNT(*) AS units, COALESCE(SUM(cost), 0) AS cost,
          SUM("uncosted") AS uncosted
        FROM unit GROUP BY "repairId", long
      ) e GROUP BY "repairId"
    )
    SELECT COALESCE(a."repairId", b."repairId", c."repairId") AS "repairId", COALESCE(a.sent, 0)::int AS sent,
      COALESCE(b.claims, 0)::int AS claims, COALESCE(b.cost, 0)::float8 AS "spentMinor",
      COALESCE(b.uncosted, 0)::int AS uncosted,
      COALESCE(c.covers, '[]') AS ended
    FROM sent a FULL JOIN spent b ON b."repairId" = a."repairId"
    FULL JOIN ended c ON c."repairId" = COALESCE(a."repairId", b."repairId")`;
}

function ofRepair(repairId: string | undefined): Prisma.Sql {
  return repairId === undefined ? Prisma.sql`TRUE` : Prisma.sql`w."repairId" = ${repairId}`;
}
