import { db } from '@/lib/db/client';
import { Prisma } from '@/lib/db/generated/client';
import type { RiskCount } from '@/lib/statistics/survival';
import { type CoverClock, unitRows } from './cover-sql';
import { type Grouping, isOfParts, linesOf, type Narrowing, unitsWhere } from './groupings';
import { SPANS, type Watched } from './rules/equal-watch';

/** What one repair, lot or pair of hands comes to. Days are of all units together; money in minor units. */
export type Tally = {
  id: string;
  units: number;
  /** units that came back for a cause that this grouping answers for */
  returned: number;
  /** units that came back for another cause only */
  otherwise: number;
  daysAtRisk: number;
  /** returns of units that came back more than once included */
  claims: number;
  /** of the claims whose cost is recorded */
  costMinor: number;
  /** claims whose cost is not recorded yet */
  uncosted: number;
  causes: { workmanship: number; part: number; firstDamage: number; inDoubt: number };
};

type Row = Omit<Tally, 'causes'> & Tally['causes'];

const SUMS = Prisma.sql`
      COUNT(*)::int AS units, (COUNT(*) FILTER (WHERE "isReturned"))::int AS returned,
      (COUNT(*) FILTER (WHERE "isBack" AND NOT "isReturned"))::int AS otherwise, SUM(days)::float8 AS "daysAtRisk", COALESCE(SUM(claims), 0)::int AS claims,
      COALESCE(SUM(cost), 0)::float8 AS "costMinor", COALESCE(SUM(uncosted), 0)::int AS uncosted,
      (COUNT(*) FILTER (WHERE "cause" = 'workmanship'))::int AS workmanship,
      (COUNT(*) FILTER (WHERE "cause" = 'fitted-part'))::int AS part,
      (COUNT(*) FILTER (WHERE "cause" = 'weakened-by-original-damage'))::int AS "firstDamage",
      (COUNT(*) FILTER (WHERE "cause" IN ('separate-fault', 'damage-after-return', 'no-fault-found')))::int
        AS "inDoubt"`;

/** With what is compared with others: the units that could be watched for each of SPANS, and their returns within it. */
export type SpannedTally = Tally & Watched;

type SpannedRow = Row & { watched: number[]; backPlanned: number[]; backAfter: number[] };

const SPAN_COUNTS = Prisma.sql`
      ARRAY[${Prisma.join(
        SPANS.map((days) => Prisma.sql`(COUNT(*) FILTER (WHERE planned >= ${Prisma.raw(`${days}`)}))::int`),
      )}] AS watched,
      COALESCE(ARRAY_AGG(planned) FILTER (WHERE "backAfter" IS NOT NULL), '{}') AS "backPlanned",
      COALESCE(ARRAY_AGG("backAfter") FILTER (WHERE "backAfter" IS NOT NULL), '{}') AS "backAfter"`;

/**
 * One row for each repair, lot or whatever is asked for that has at least one unit, by its id. Of the few that came back the
 * days are read and counted here, which spares the server a count for each span.
 */
export async function tallyBy(
  grouping: Grouping,
  clock: CoverClock,
  narrowing: Narrowing = {},
): Promise<SpannedTally[]> {
  const rows = await db.$queryRaw<SpannedRow[]>`
    WITH ${countedBy(grouping, clock, narrowing)}
    SELECT "id", ${SUMS}, ${SPAN_COUNTS}
    FROM counted GROUP BY "id" ORDER BY "id"`;
  return rows.map(({ watched, backPlanned, backAfter, ...row }) => ({
    ...tallyOf(row),
    spans: SPANS.map((days, place) => ({
      units: watched[place] ?? 0,
      returned: backAfter.filter((after, unit) => after <= days && (backPlanned[unit] ?? 0) >= days).length,
    })),
  }));
}

function tallyOf({ workmanship, part, firstDamage, inDoubt, ...tally }: Row): Tally {
  return { ...tally, causes: { workmanship, part, firstDamage, inDoubt } };
}

/** The whole watch over some units as a table by days at risk, earliest first: what a survival curve is drawn from. */
export async function watchOf(
  grouping: Grouping,
  clock: CoverClock,
  narrowing: Narrowing,
): Promise<RiskCount[]> {
  return db.$queryRaw<RiskCount[]>`
    WITH ${countedBy(grouping, clock, narrowing)}
    SELECT days::int AS days, (COUNT(*) FILTER (WHERE "isReturned"))::int AS returned,
      (COUNT(*) FILTER (WHERE NOT "isReturned"))::int AS "left"
    FROM counted GROUP BY days ORDER BY days`;
}

export type WatchedTally = Tally & { watch: RiskCount[] };

type WatchedRow = Row & { dayList: number[]; returnedList: number[]; leftList: number[] };

/** Tallies with their watches, in one reading of every unit: side by side the two would join 100,000 jobs twice. */
export async function watchedTallies(
  grouping: Grouping,
  clock: CoverClock,
  narrowing: Narrowing = {},
): Promise<WatchedTally[]> {
  const rows = await db.$queryRaw<WatchedRow[]>`
    WITH ${countedBy(grouping, clock, narrowing)},
    daily AS (SELECT "id", days, ${SUMS} FROM counted GROUP BY "id", days)
    SELECT "id", SUM(units)::int AS units, SUM(returned)::int AS returned, SUM(otherwise)::int AS otherwise,
      SUM("daysAtRisk")::float8 AS "daysAtRisk", SUM(claims)::int AS claims, SUM("costMinor")::float8 AS "costMinor",
      SUM(uncosted)::int AS uncosted, SUM(workmanship)::int AS workmanship, SUM(part)::int AS part,
      SUM("firstDamage")::int AS "firstDamage", SUM("inDoubt")::int AS "inDoubt",
      ARRAY_AGG(days::int ORDER BY days) AS "dayList", ARRAY_AGG(returned ORDER BY days) AS "returnedList",
      ARRAY_AGG(units - returned ORDER BY days) AS "leftList"
    FROM daily GROUP BY "id" ORDER BY "id"`;
  return rows.map(({ dayList, returnedList, leftList, ...row }) => ({
    ...tallyOf(row),
    watch: dayList.map((days, i) => ({ days, returned: returnedList[i] ?? 0, left: leftList[i] ?? 0 })),
  }));
}

/**
 * `counted`: a unit once for each id it counts under. Two pieces of one lot in a unit are one chance to come back.
 * A return for a cause that the grouping does not answer for ends the watch, and counts as none. `backAfter` is the days to the
 * return it answers for.
 */
function countedBy(grouping: Grouping, clock: CoverClock, narrowing: Narrowing): Prisma.Sql {
  if (isOfParts(grouping)) {
    const id = PART_KEY[grouping] ?? PART_KEY['lot'];
    // Two lines of a unit can be one only where it has twins, or more than one part of a supplier; only those are sorted.
    const mayBeOne = grouping === 'supplier' ? Prisma.sql`TRUE` : Prisma.sql`"hasTwin"`;
    return Prisma.sql`${linesOf(clock, narrowing)},
      piece AS NOT MATERIALIZED (
        SELECT ${id} AS "id", line."number", line."partOn" IS NOT NULL AS "isReturned",
          line."returnedOn" IS NOT NULL AS "isBack", line."cause", line."claims", line.cost, line."uncosted", line."hasTwin",
          line.planned, line."partOn" - line."startsOn" AS "backAfter",
          CASE WHEN line."partOn" IS NULL THEN line.days ELSE line."partOn" - line."startsOn" END AS days
        FROM line ${grouping === 'lot' ? Prisma.empty : LOTS} WHERE line."lotId" IS NOT NULL
      ),
      counted AS (
        SELECT "id", "number", "isReturned", "isBack", days, planned, "backAfter", "cause", "claims", cost, "uncosted"
        FROM piece WHERE NOT ${mayBeOne}
        UNION ALL
        SELECT "id", "number", BOOL_OR("isReturned"), BOOL_OR("isBack"), MIN(days), MIN(planned), MIN("backAfter"), MIN("cause"),
          MAX("claims"), MAX(cost), MAX("uncosted")
        FROM piece WHERE ${mayBeOne} GROUP BY "id", "number"
      )`;
  }
  const isByHand = grouping === 'technician';
  return Prisma.sql`${unitRows(clock, unitsWhere(narrowing))},
    counted AS (
      SELECT ${UNIT_KEY[grouping] ?? UNIT_KEY['repair']} AS "id", u."number", u."isReturned" AS "isBack", u."cause", u."claims",
        u.cost, u."uncosted",
        ${isByHand ? Prisma.sql`u."isWork"` : Prisma.sql`u."isReturned"`} AS "isReturned",
        ${isByHand ? Prisma.sql`CASE WHEN u."isWork" THEN u."workDays" ELSE u.days END` : Prisma.sql`u.days`} AS days,
        u.planned, ${isByHand ? Prisma.sql`u."workOn"` : Prisma.sql`u."returnedOn"`} - u."startsOn" AS "backAfter"
      FROM unit u ${grouping === 'policy' ? POLICIES : Prisma.empty}
      WHERE ${isByHand ? Prisma.sql`u."technicianId" IS NOT NULL` : Prisma.sql`TRUE`}
    )`;
}

const POLICIES = Prisma.sql`JOIN "policy_version" p ON p."id" = u."policyVersionId"`;

const LOTS = Prisma.sql`JOIN "lot" t ON t."id" = line."lotId"`;

const PART_KEY: Partial<Record<Grouping, Prisma.Sql>> = {
  part: Prisma.sql`t."partId"`,
  lot: Prisma.sql`line."lotId"`,
  supplier: Prisma.sql`t."supplier"`,
};

const UNIT_KEY: Partial<Record<Grouping, Prisma.Sql>> = {
  repair: Prisma.sql`u."repairId"`,
  model: Prisma.sql`u."modelId"`,
  policy: Prisma.sql`p."policyId"`,
  technician: Prisma.sql`u."technicianId"`,
};
