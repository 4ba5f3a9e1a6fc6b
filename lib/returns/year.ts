import { db } from '@/lib/db/client';
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

/** Units sent back and money spent on covered claims in the last 365 days, by repair. */
export async function yearByRepair(clock: CoverClock): Promise<YearOfRepair[]> {
  const { today } = clock;
  return db.$queryRaw<YearOfRepair[]>`
    WITH sent AS (
      SELECT j."repairId", COUNT(*) AS sent FROM "certificate" o JOIN "job" j ON j."id" = o."jobId"
      WHERE o."revision" = 1 AND o."issuedOn" > ${today}::date - 365 GROUP BY j."repairId"
    ),
    spent AS (
      SELECT j."repairId", COUNT(*) AS claims, SUM(k.cost) AS cost, COUNT(*) FILTER (WHERE k.cost IS NULL) AS uncosted
      FROM (${coveredClaims(clock)}) k
      JOIN "certificate" o ON o."number" = k."certificateNumber" AND o."revision" = 1
      JOIN "job" j ON j."id" = o."jobId"
      WHERE k."openedOn" > ${today}::date - 365 GROUP BY j."repairId"
    )
    SELECT COALESCE(a."repairId", b."repairId") AS "repairId", COALESCE(a.sent, 0)::int AS sent,
      COALESCE(b.claims, 0)::int AS claims, COALESCE(b.cost, 0)::float8 AS "spentMinor",
      COALESCE(b.uncosted, 0)::int AS uncosted
    FROM sent a FULL JOIN spent b ON b."repairId" = a."repairId"`;
}

/** What each covered claim of a repair cost, and how many have no recorded cost yet. */
export type ClaimCosts = { costs: number[]; uncosted: number };

/** Costs of covered claims by repair, whenever they were opened. */
export async function claimCosts(clock: CoverClock): Promise<Map<string, ClaimCosts>> {
  const rows = await db.$queryRaw<{ repairId: string; costs: number[] | null; uncosted: number }[]>`
    SELECT j."repairId", ARRAY_AGG(k.cost::float8 ORDER BY k."number") FILTER (WHERE k.cost IS NOT NULL) AS costs,
      (COUNT(*) FILTER (WHERE k.cost IS NULL))::int AS uncosted
    FROM (${coveredClaims(clock)}) k
    JOIN "certificate" o ON o."number" = k."certificateNumber" AND o."revision" = 1
    JOIN "job" j ON j."id" = o."jobId"
    GROUP BY j."repairId"`;
  return new Map(rows.map(({ repairId, costs, uncosted }) => [repairId, { costs: costs ?? [], uncosted }]));
}
