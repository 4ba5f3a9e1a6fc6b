import { db } from '@/lib/db/client';
import { Prisma } from '@/lib/db/generated/client';
import { type CoverClock, coveredClaims } from './cover-sql';

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
};

/** Units sent back and money spent on covered claims in the last 365 days, by repair; of one alone where it is given. */
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
    )
    SELECT COALESCE(a."repairId", b."repairId") AS "repairId", COALESCE(a.sent, 0)::int AS sent,
      COALESCE(b.claims, 0)::int AS claims, COALESCE(b.cost, 0)::float8 AS "spentMinor",
      COALESCE(b.uncosted, 0)::int AS uncosted
    FROM sent a FULL JOIN spent b ON b."repairId" = a."repairId"`;
}

/** What each covered claim of a repair cost, and how many have no recorded cost yet. */
export type ClaimCosts = { costs: number[]; uncosted: number };

/** Costs of covered claims by repair, whenever they were opened; of one alone where it is given. */
export async function claimCosts(clock: CoverClock, repairId?: string): Promise<Map<string, ClaimCosts>> {
  const rows = await db.$queryRaw<{ repairId: string; costs: number[] | null; uncosted: number }[]>`
    SELECT k."repairId", ARRAY_AGG(k.cost::float8 ORDER BY k."number") FILTER (WHERE k.cost IS NOT NULL) AS costs,
      (COUNT(*) FILTER (WHERE k.cost IS NULL))::int AS uncosted
    FROM (${coveredClaims(clock, ofRepair(repairId))}) k GROUP BY k."repairId"`;
  return new Map(rows.map(({ repairId: id, costs, uncosted }) => [id, { costs: costs ?? [], uncosted }]));
}

function ofRepair(repairId: string | undefined): Prisma.Sql {
  return repairId === undefined ? Prisma.sql`TRUE` : Prisma.sql`w."repairId" = ${repairId}`;
}
