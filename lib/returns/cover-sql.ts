/*
 * Words of this room.
 * Cover line: one piece of work, or one part, with its own term; counted once whatever the revision of its certificate.
 * Unit: one certificate with all of its lines, so that a recorder with three lines that comes back has come back once.
 * Return: a claim ruled covered, at least partly; a lot answers for a first one put down to the part, a hand for a first one
 * put down to the work, and everything else for all of them. Days at risk: from the start of cover to the return, the end or today.
 * Planned: the days a unit or line can be watched for, whether it comes back or not: to today, or to the end that its first
 * paper gave it. What a return adds to its cover does not count, or only what came back would be watched so long.
 * Without a recorded cost: a return whose claim is not sent back yet; it is said, never taken as nought.
 *
 * Each unit and each cover line has a narrow row of its own (watch-sql.ts), so that no certificate is read again for a page;
 * what depends on today or on what an hour costs is reckoned here, when they are read.
 */
import type { Day } from '@/lib/calendar/day';
import { Prisma } from '@/lib/db/generated/client';
import { IS_COVERED } from './watch-sql';

export type CoverClock = { today: Day; labourRateMinor: number };

/** Minutes are rounded half up once for each claim, as in lib/warranty/rules/claim-cost.ts. */
function labour(minutes: Prisma.Sql, { labourRateMinor }: CoverClock): Prisma.Sql {
  return Prisma.sql`(${minutes}::bigint * ${labourRateMinor}::bigint + 30) / 60`;
}

/** Of all claims of a row whose cost is recorded; null where there is none. Most have one, which needs no sum over a list. */
function costOf(clock: CoverClock): Prisma.Sql {
  return Prisma.sql`CASE w."claims" - w."uncosted" WHEN 0 THEN NULL
    WHEN 1 THEN w."costOtherMinor" + ${labour(Prisma.sql`w."costMinutes"[1]`, clock)}
    ELSE w."costOtherMinor" + (SELECT SUM(${labour(Prisma.sql`m`, clock)}) FROM UNNEST(w."costMinutes") m) END`;
}

/** Claims ruled covered for good that `where` lets through, with what they cost and their unit's repair, which has so come back. */
export function coveredClaims(clock: CoverClock, where: Prisma.Sql): Prisma.Sql {
  return Prisma.sql`
    SELECT w."repairId", k."number", k."openedOn",
      ${labour(Prisma.sql`k."costMinutes"`, clock)} + k."costPartsMinor" + k."costPostageMinor" AS cost
    FROM (SELECT * FROM "claim" WHERE ${Prisma.raw(IS_COVERED)}) k
    JOIN "unit_watch" w ON w."number" = k."certificateNumber" AND w."returnedOn" IS NOT NULL WHERE ${where}`;
}

/**
 * `unit`: one row for each certificate, by the job it was first issued for. It is at risk from the start of its first
 * line to its first return, to the end of its longest line, or to today. What narrows it is asked of `w`.
 */
export function unitRows(clock: CoverClock, where: Prisma.Sql = Prisma.sql`TRUE`): Prisma.Sql {
  return Prisma.sql`
    unit AS NOT MATERIALIZED (
      SELECT w.*, w."returnedOn" IS NOT NULL AS "isReturned", w."workOn" IS NOT NULL AS "isWork", ${costOf(clock)} AS cost,
        GREATEST(0, LEAST(${clock.today}::date, w."endsOn", w."returnedOn") - w."startsOn") AS days,
        GREATEST(0, LEAST(w."endsOn", w."workOn") - w."startsOn") AS "workDays",
        ${planned(clock)} AS planned
      FROM "unit_watch" w WHERE ${where}
    )`;
}

/** `line`: one row for each cover line. What narrows it is asked of `w`, and of `u`, its unit, once `ofUnits` joins it. */
export function lineRows(clock: CoverClock, where: Prisma.Sql, ofUnits: boolean): Prisma.Sql {
  const until = Prisma.sql`LEAST(${clock.today}::date, w."endsOn", w."returnedOn")`;
  return Prisma.sql`
    line AS NOT MATERIALIZED (
      SELECT w.*, ${costOf(clock)} AS cost, ${until} AS "observedUntil", GREATEST(0, ${until} - w."startsOn") AS days,
        ${planned(clock)} AS planned
      FROM "line_watch" w ${ofUnits ? UNITS : Prisma.empty} WHERE ${where}
    )`;
}

/** Days that a row `w` can be watched for, whether it comes back or not. */
export function planned({ today }: CoverClock): Prisma.Sql {
  return Prisma.sql`LEAST(${today}::date, w."firstEndsOn") - w."startsOn"`;
}

/** Days that every unit of a month or of a sheet is watched for, so that old and young ones compare. */
export const WATCHED_DAYS = 90;
const SO_LONG = Prisma.raw(String(WATCHED_DAYS));

/** Of `unit`: it could be watched so long. A shorter cover cannot: what breaks after its end does not come back. */
export const IS_WATCHED = Prisma.sql`planned >= ${SO_LONG}`;
/** Of `unit`: it can be watched so long, once the days are over. */
export const IS_YOUNG = Prisma.sql`(planned < ${SO_LONG} AND "firstEndsOn" - "startsOn" >= ${SO_LONG})`;
/** Of `unit`: it could be watched so long and came back within it. */
export const IS_BACK = Prisma.sql`(${IS_WATCHED} AND "isReturned" AND days <= ${SO_LONG})`;

/** The day is the same on both sides; said here, rows come in the order of either table's index, and a page ends early. */
const UNITS = Prisma.sql`JOIN "unit_watch" u ON u."number" = w."number" AND u."issuedOn" = w."issuedOn"`;
