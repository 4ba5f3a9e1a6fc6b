import { type Day, dayFromDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { Prisma } from '@/lib/db/generated/client';
import { type CoverClock, lineRows } from './cover-sql';
import { linesWhere, type Narrowing } from './groupings';

/** One cover line with all that figures are told by. Ids lead to lists, names are shown; money in minor units. */
export type CoverRow = {
  certificate: string;
  key: string;
  kind: 'work' | 'part';
  description: string;
  jobNumber: string;
  repairId: string;
  repair: string;
  modelId: string;
  model: string;
  partId: string | null;
  part: string | null;
  lotId: string | null;
  lot: string | null;
  supplier: string | null;
  technicianId: string | null;
  technician: string | null;
  policyId: string;
  policy: string;
  /** the day the certificate left with the unit */
  issuedOn: Day;
  startsOn: Day;
  /** the return, the end of cover or today, whichever came first */
  observedUntil: Day;
  returnedOn: Day | null;
  daysAtRisk: number;
  claimNumber: string | null;
  cause: string | null;
  /** of all claims on the line; null without a return, or while the cost of one is not recorded */
  costMinor: number | null;
};

type StoredRow = Omit<CoverRow, 'issuedOn' | 'startsOn' | 'observedUntil' | 'returnedOn' | 'kind'> & {
  kind: string;
  position: number;
  issuedOn: Date;
  startsOn: Date;
  observedUntil: Date;
  returnedOn: Date | null;
};

export const ROWS_PER_PAGE = 50;

/** How many rows, units and returned units a figure stands on. */
export type RowCount = { rows: number; units: number; returned: number };

export async function countRows(clock: CoverClock, narrowing: Narrowing): Promise<RowCount> {
  const [count] = await db.$queryRaw<RowCount[]>`
    WITH ${lineRows(clock, linesWhere(narrowing))}
    SELECT COALESCE(SUM(rows), 0)::int AS rows, COUNT(*)::int AS units,
      (COUNT(*) FILTER (WHERE "isReturned"))::int AS returned
    FROM (
      SELECT "number", COUNT(*) AS rows, BOOL_OR("returnedOn" IS NOT NULL) AS "isReturned"
      FROM line WHERE ${onlyReturns(narrowing)} GROUP BY "number"
    ) u`;
  return count ?? { rows: 0, units: 0, returned: 0 };
}

/** One page of rows, the newest certificates first. */
export async function readRows(
  clock: CoverClock,
  narrowing: Narrowing,
  page: { skip: number; take: number },
): Promise<CoverRow[]> {
  const rows = await db.$queryRaw<StoredRow[]>`
    WITH ${lineRows(clock, linesWhere(narrowing))},
    shown AS (
      SELECT * FROM line WHERE ${onlyReturns(narrowing)}
      ORDER BY "issuedOn" DESC, "number", "position" LIMIT ${page.take} OFFSET ${page.skip}
    )
    SELECT s."number" AS certificate, s."key", s."kind", s."description", s."position", j."number" AS "jobNumber",
      r."id" AS "repairId", r."name" AS repair, m."id" AS "modelId", m."maker" || ' ' || m."name" AS model,
      p."id" AS "partId", p."name" AS part, t."id" AS "lotId", t."code" AS lot, t."supplier",
      w."id" AS "technicianId", w."name" AS technician, y."id" AS "policyId", y."name" AS policy,
      s."issuedOn", s."startsOn", GREATEST(s."observedUntil", s."startsOn") AS "observedUntil", s."returnedOn",
      s.days::int AS "daysAtRisk", s."claimNumber", s."cause",
      (CASE WHEN s.uncosted = 0 THEN s.cost END)::float8 AS "costMinor"
    FROM shown s
    JOIN "job" j ON j."id" = s."jobId"
    JOIN "repair" r ON r."id" = j."repairId"
    JOIN "model" m ON m."id" = j."modelId"
    JOIN "policy_version" v ON v."id" = s."policyVersionId"
    JOIN "policy" y ON y."id" = v."policyId"
    LEFT JOIN "lot" t ON t."id" = s."lotId"
    LEFT JOIN "part" p ON p."id" = t."partId"
    LEFT JOIN "auth_user" w ON w."id" = (
      SELECT e."userId" FROM "work_entry" e WHERE e."jobId" = s."jobId"
      GROUP BY e."userId" ORDER BY SUM(e."minutes") DESC, MIN(e."at") LIMIT 1)
    ORDER BY s."issuedOn" DESC, s."number", s."position"`;
  return rows.map(({ position: _, kind, issuedOn, startsOn, observedUntil, returnedOn, ...row }) => ({
    ...row,
    kind: kind === 'part' ? 'part' : 'work',
    issuedOn: dayFromDate(issuedOn),
    startsOn: dayFromDate(startsOn),
    observedUntil: dayFromDate(observedUntil),
    returnedOn: returnedOn ? dayFromDate(returnedOn) : null,
  }));
}

function onlyReturns(narrowing: Narrowing): Prisma.Sql {
  return narrowing.onlyReturns ? Prisma.sql`"returnedOn" IS NOT NULL` : Prisma.sql`TRUE`;
}
