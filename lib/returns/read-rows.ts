import { type Day, dayFromDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { Prisma } from '@/lib/db/generated/client';
import type { CoverClock } from './cover-sql';
import { isOfWholeUnits, linesOf, type Narrowing, unitsWhere } from './groupings';

/** One cover line with all that figures are told by. Ids lead to lists, names are shown; money in minor units. */
export type CoverRow = {
  certificate: string;
  /** of the revision that first had the line */
  certificateId: string;
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
  /** whoever did most of the work on its unit, before it was first sent back */
  technicianId: string | null;
  technician: string | null;
  policyId: string;
  policy: string;
  /** the day the certificate that first had the line left with the unit */
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
} & RowPlace;

type StoredRow = Omit<
  CoverRow,
  'issuedOn' | 'unitIssuedOn' | 'startsOn' | 'observedUntil' | 'returnedOn' | 'kind'
> & {
  kind: string;
  issuedOn: Date;
  unitIssuedOn: Date;
  startsOn: Date;
  observedUntil: Date;
  returnedOn: Date | null;
};

export const ROWS_PER_PAGE = 50;

/** How many rows, units and returned units a figure stands on. */
export type RowCount = { rows: number; units: number; returned: number };

export async function countRows(clock: CoverClock, narrowing: Narrowing): Promise<RowCount> {
  const counting = isOfWholeUnits(narrowing)
    ? db.$queryRaw<RowCount[]>`
        SELECT COALESCE(SUM(w."lineCount"), 0)::int AS rows, COUNT(*)::int AS units, COUNT(w."returnedOn")::int AS returned
        FROM "unit_watch" w WHERE ${unitsWhere(narrowing)}`
    : db.$queryRaw<RowCount[]>`
        WITH ${linesOf(clock, narrowing)}
        SELECT COUNT(*)::int AS rows, COUNT(DISTINCT "number")::int AS units,
          COUNT(DISTINCT CASE WHEN "returnedOn" IS NOT NULL THEN "number" END)::int AS returned
        FROM line`;
  const [count] = await counting;
  return count ?? { rows: 0, units: 0, returned: 0 };
}

/** Where a page of rows begins: after so many, or after the last row of the page before. */
export type RowsFrom = { skip: number } | { after: RowPlace };

/** Rows lie by the day their unit was sent back, the newest first, then by certificate and place in it. */
export type RowPlace = { unitIssuedOn: Day; certificate: string; position: number; lineId: string };

/** One page of rows, the newest certificates first. */
export async function readRows(
  clock: CoverClock,
  narrowing: Narrowing,
  page: RowsFrom & { take: number },
): Promise<CoverRow[]> {
  const from = 'after' in page ? page.after : null;
  const rows = await db.$queryRaw<StoredRow[]>`
    WITH ${linesOf(clock, narrowing)},
    shown AS (
      SELECT * FROM line WHERE ${from ? isAfter(from) : Prisma.sql`TRUE`}
      ORDER BY "issuedOn" DESC, "number", "position", "lineId"
      LIMIT ${page.take} OFFSET ${'after' in page ? 0 : page.skip}
    )
    SELECT s."number" AS certificate, c."id" AS "certificateId", l."key", l."kind", l."description", j."number" AS "jobNumber",
      r."id" AS "repairId", r."name" AS repair, m."id" AS "modelId", m."maker" || ' ' || m."name" AS model,
      p."id" AS "partId", p."name" AS part, t."id" AS "lotId", t."code" AS lot, t."supplier",
      h."id" AS "technicianId", h."name" AS technician, y."id" AS "policyId", y."name" AS policy,
      c."issuedOn", s."startsOn", GREATEST(s."observedUntil", s."startsOn") AS "observedUntil", s."returnedOn",
      s.days::int AS "daysAtRisk", s."claimNumber", s."cause",
      (CASE WHEN s."uncosted" = 0 THEN s.cost END)::float8 AS "costMinor",
      s."issuedOn" AS "unitIssuedOn", s."position", s."lineId"
    FROM shown s
    JOIN "certificate_line" l ON l."id" = s."lineId"
    JOIN "certificate" c ON c."id" = l."certificateId"
    JOIN "job" j ON j."id" = c."jobId"
    JOIN "unit_watch" u ON u."number" = s."number"
    JOIN "repair" r ON r."id" = u."repairId"
    JOIN "model" m ON m."id" = u."modelId"
    JOIN "policy_version" v ON v."id" = u."policyVersionId"
    JOIN "policy" y ON y."id" = v."policyId"
    LEFT JOIN "lot" t ON t."id" = s."lotId"
    LEFT JOIN "part" p ON p."id" = t."partId"
    LEFT JOIN "auth_user" h ON h."id" = u."technicianId"
    ORDER BY s."issuedOn" DESC, s."number", s."position", s."lineId"`;
  return rows.map((row) => ({
    ...row,
    kind: row.kind === 'part' ? 'part' : 'work',
    issuedOn: dayFromDate(row.issuedOn),
    unitIssuedOn: dayFromDate(row.unitIssuedOn),
    startsOn: dayFromDate(row.startsOn),
    observedUntil: dayFromDate(row.observedUntil),
    returnedOn: row.returnedOn ? dayFromDate(row.returnedOn) : null,
  }));
}

/** The first half lets an index begin at the day, the second leaves out what was shown of it. */
function isAfter({ unitIssuedOn, certificate, position, lineId }: RowPlace): Prisma.Sql {
  const day = Prisma.sql`${unitIssuedOn}::date`;
  return Prisma.sql`"issuedOn" <= ${day} AND ("issuedOn" < ${day}
    OR ("number", "position", "lineId") > (${certificate}, ${position}::int, ${lineId}))`;
}
