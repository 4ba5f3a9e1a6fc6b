import { Prisma } from '@/lib/db/generated/client';
import { HANDS } from './cover-sql';

/** What figures are told by. Those of a part count its cover lines; the others count units. */
export const GROUPINGS = ['repair', 'model', 'policy', 'part', 'lot', 'supplier', 'technician'] as const;
export type Grouping = (typeof GROUPINGS)[number];

/** Which rows a figure stands on: all, or those of one of a grouping, of one month, or only returns. */
export type Narrowing = {
  of?: { grouping: Grouping; id: string } | undefined;
  /** month of the certificate, 'YYYY-MM' */
  month?: string | undefined;
  onlyReturns?: boolean | undefined;
};

const OF_PARTS: readonly Grouping[] = ['part', 'lot', 'supplier'];

export function isOfParts(grouping: Grouping): boolean {
  return OF_PARTS.includes(grouping);
}

/** Asked of the certificate as first issued (`o`) and its job (`j`). */
export function unitsWhere({ of, month }: Narrowing): Prisma.Sql {
  const asked = [monthWhere(month, Prisma.sql`o`)];
  if (of && !isOfParts(of.grouping)) asked.push(unitOf(of.grouping, of.id));
  return Prisma.join(asked, ' AND ');
}

/** Asked of the certificate that first had a line (`c`) and of the line (`l`). */
export function linesWhere(narrowing: Narrowing): Prisma.Sql {
  const { of } = narrowing;
  const asked = [Prisma.sql`TRUE`];
  if (of && isOfParts(of.grouping)) asked.push(partOf(of.grouping, of.id));
  if (narrowing.month || (of && !isOfParts(of.grouping)))
    asked.push(Prisma.sql`c."number" IN (
      SELECT o."number" FROM "certificate" o JOIN "job" j ON j."id" = o."jobId"
      WHERE o."revision" = 1 AND ${unitsWhere(narrowing)})`);
  return Prisma.join(asked, ' AND ');
}

function unitOf(grouping: Grouping, id: string): Prisma.Sql {
  switch (grouping) {
    case 'repair':
      return Prisma.sql`j."repairId" = ${id}`;
    case 'model':
      return Prisma.sql`j."modelId" = ${id}`;
    case 'policy':
      return Prisma.sql`o."policyVersionId" IN (SELECT "id" FROM "policy_version" WHERE "policyId" = ${id})`;
    default:
      return Prisma.sql`j."id" IN (WITH ${HANDS} SELECT "jobId" FROM hand WHERE "userId" = ${id})`;
  }
}

function partOf(grouping: Grouping, id: string): Prisma.Sql {
  switch (grouping) {
    case 'lot':
      return Prisma.sql`l."lotId" = ${id}`;
    case 'part':
      return Prisma.sql`l."lotId" IN (SELECT "id" FROM "lot" WHERE "partId" = ${id})`;
    default:
      return Prisma.sql`l."lotId" IN (SELECT "id" FROM "lot" WHERE "supplier" = ${id})`;
  }
}

function monthWhere(month: string | undefined, table: Prisma.Sql): Prisma.Sql {
  if (!month) return Prisma.sql`TRUE`;
  const first = Prisma.sql`${`${month}-01`}::date`;
  return Prisma.sql`(${table}."issuedOn" >= ${first} AND ${table}."issuedOn" < ${first} + INTERVAL '1 month')`;
}
