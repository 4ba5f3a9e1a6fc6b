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

/** Asked of every unit of `counted`. */
const UNITS = Prisma.sql`COUNT(*)::int AS units, SUM(days)::float8 AS "daysAtRisk"`;

/**
 * `back`: one row for each id of which a unit came back, by the few rows that did (their index spares the server the others); what
 * nobody came back for is nought there.
 */
const BACK = Prisma.sql`
    back AS (
      SELECT "id", COUNT(*) FILTER (WHERE "isReturned") AS returned, COUNT(*) FILTER (WHERE NOT "isReturned") AS otherwise,
        SUM(claims) AS claims, SUM(cost) AS cost, SUM(uncosted) AS uncosted,
        COUNT(*) FILTER (WHERE "cause" = 'workmanship') AS workmanship,
        COUNT(*) FILTER (WHERE "cause" = 'fitted-part') AS part,
        COUNT(*) FILTER (WHERE "cause" = 'weakened-by-original-damage') AS "firstDamage",
        COUNT(*) FILTER (WHERE "cause" IN ('separate-fault', 'damage-after-return', 'no-fault-found')) AS "inDoubt",
        ARRAY_AGG(cost::float8 ORDER BY "number") FILTER (WHERE uncosted = 0) AS costs,
        ARRAY_AGG(planned) FILTER (WHERE "backAfter" IS NOT NULL) AS "backPlanned",
        ARRAY_AGG("backAfter") FILTER (WHERE "backAfter" IS NOT NULL) AS "backAfter"
      FROM counted WHERE "isBack" GROUP BY "id"
    )`;

const OF_BACK = Prisma.sql`
      COALESCE(b.returned, 0)::int AS returned, COALESCE(b.otherwise, 0)::int AS otherwise, COALESCE(b.claims, 0)::int AS claims,
      COALESCE(b.cost, 0)::float8 AS "costMinor", COALESCE(b.uncosted, 0)::int AS uncosted,
      COALESCE(b.workmanship, 0)::int AS workmanship, COALESCE(b.part, 0)::int AS part,
      COALESCE(b."firstDamage", 0)::int AS "firstDamage", COALESCE(b."inDoubt", 0)::int AS "inDoubt"`;

/** With what is compared with others: the units that could be watched for each of SPANS, and their returns within it. */
export type SpannedTally = Tally & Watched;

type SpannedRow = Row & { watched: number[]; backPlanned: number[]; backAfter: number[] };

const WATCHED = Prisma.sql`
      ARRAY[${Prisma.join(
        SPANS.map((days) => Prisma.sql`(COUNT(*) FILTER (WHERE planned >= ${Prisma.raw(`${days}`)}))::int`),
      )}] AS watched`;

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
    WITH ${countedBy(grouping, clock, narrowing)}, ${BACK},
    every AS (SELECT "id", ${UNITS}, ${WATCHED} FROM counted GROUP BY "id")
    SELECT e.*, ${OF_BACK}, COALESCE(b."backPlanned", '{}') AS "backPlanned", COALESCE(b."backAfter", '{}') AS "backAfter"
    FROM every e LEFT JOIN back b USING ("id") ORDER BY "id"`;
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

export type WatchedTally = Tally & {
  watch: RiskCount[];
  /** what each unit that came back has cost so far, all its claims together; without those of which a claim has no recorded cost */
  costs: number[];
};

type WatchedRow = Row & { costs: number[]; dayList: number[]; returnedList: number[]; leftList: number[] };

/** Tallies with their watches, in one reading of every unit: side by side the two would join 100,000 jobs twice. */
export async function watchedTallies(
  grouping: Grouping,
  clock: CoverClock,
  narrowing: Narrowing = {},
): Promise<WatchedTally[]> {
  const rows = await db.$queryRaw<WatchedRow[]>`
    WITH ${countedBy(grouping, clock, narrowing)}, ${BACK},
    daily AS (
      SELECT "id", days, COUNT(*)::int AS units, (COUNT(*) FILTER (WHERE "isReturned"))::int AS returned
      FROM counted GROUP BY "id", days
    ),
    every AS (
      SELECT "id", SUM(units)::int AS units, SUM(units * days)::float8 AS "daysAtRisk",
        ARRAY_AGG(days::int ORDER BY days) AS "dayList", ARRAY_AGG(returned ORDER BY days) AS "returnedList",
        ARRAY_AGG(units - returned ORDER BY days) AS "leftList"
      FROM daily GROUP BY "id"
    )
    SELECT e.*, ${OF_BACK}, COALESCE(b.costs, '{}') AS costs FROM every e LEFT JOIN back b USING ("id") ORDER BY "id"`;
  return rows.map(({ dayList, returnedList, leftList, costs, ...row }) => ({
    ...tallyOf(row),
    costs,
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
      counted AS NOT MATERIALIZED (
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
    counted AS NOT MATERIALIZED (
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
