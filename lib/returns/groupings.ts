import { Prisma } from '@/lib/db/generated/client';
import { type CoverClock, lineRows } from './cover-sql';

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

/** True where the rows asked for are all lines of some units, so that units tell how many there are. */
export function isOfWholeUnits({ of, onlyReturns }: Narrowing): boolean {
  return !onlyReturns && !(of && isOfParts(of.grouping));
}

/** Asked of a unit's row as `w`. */
export function unitsWhere({ of, month }: Narrowing): Prisma.Sql {
  const asked = [monthWhere(month)];
  if (of && !isOfParts(of.grouping)) asked.push(unitOf(of.grouping, of.id, Prisma.sql`w`));
  return Prisma.join(asked, ' AND ');
}

/** `line`, narrowed. */
export function linesOf(clock: CoverClock, { of, month, onlyReturns }: Narrowing): Prisma.Sql {
  const asked = [monthWhere(month)];
  if (onlyReturns) asked.push(Prisma.sql`w."returnedOn" IS NOT NULL`);
  if (!of) return lineRows(clock, Prisma.join(asked, ' AND '), false);
  const ofUnits = !isOfParts(of.grouping);
  asked.push(ofUnits ? unitOf(of.grouping, of.id, Prisma.sql`u`) : partOf(of.grouping, of.id));
  return lineRows(clock, Prisma.join(asked, ' AND '), ofUnits);
}

function unitOf(grouping: Grouping, id: string, unit: Prisma.Sql): Prisma.Sql {
  switch (grouping) {
    case 'repair':
      return Prisma.sql`${unit}."repairId" = ${id}`;
    case 'model':
      return Prisma.sql`${unit}."modelId" = ${id}`;
    case 'policy':
      return Prisma.sql`${unit}."policyVersionId" IN (SELECT "id" FROM "policy_version" WHERE "policyId" = ${id})`;
    default:
      return Prisma.sql`${unit}."technicianId" = ${id}`;
  }
}

function partOf(grouping: Grouping, id: string): Prisma.Sql {
  switch (grouping) {
    case 'lot':
      return Prisma.sql`w."lotId" = ${id}`;
    case 'part':
      return Prisma.sql`w."lotId" IN (SELECT "id" FROM "lot" WHERE "partId" = ${id})`;
    default:
      return Prisma.sql`w."lotId" IN (SELECT "id" FROM "lot" WHERE "supplier" = ${id})`;
  }
}

function monthWhere(month: string | undefined): Prisma.Sql {
  if (!month) return Prisma.sql`TRUE`;
  const first = Prisma.sql`${`${month}-01`}::date`;
  return Prisma.sql`(w."issuedOn" >= ${first} AND w."issuedOn" < ${first} + INTERVAL '1 month')`;
}
