import { type Day, dayFromDate, dayInZone } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { causeRow } from '@/lib/warranty/rules/causes';
import { readRuling } from '@/lib/warranty/stored-ruling';
import { type CoverClock, IS_BACK, IS_WATCHED, IS_YOUNG, unitRows } from './cover-sql';
import { unitsWhere } from './groupings';
import { type Taught, taughtChecks, type VersionCount } from './rules/taught';

/** A lesson on a repair's sheet (rules/taught.ts), with the day its first version was written. */
export type TaughtCheck = Taught & { since: Day };

/** A covered claim of a repair with what it taught; `lesson` is the note, `check` what came of it. */
export type LearntClaim = {
  number: string;
  openedOn: Day;
  cause: string;
  lesson: string;
  check: string | null;
};

export type Learning = { checks: TaughtCheck[]; claims: LearntClaim[]; ruled: number };

const CLAIMS_SHOWN = 12;

/**
 * The learning loop of one repair. A unit counts by the version of the sheet it was proved on, not by its date: units
 * booked before a lesson are proved on the old sheet, however late they leave.
 */
export async function readLearning(repairId: string, clock: CoverClock, timeZone: string): Promise<Learning> {
  const [sheets, counts, rows] = await Promise.all([
    db.checkSheet.findMany({
      where: { repairId },
      orderBy: { version: 'asc' },
      select: {
        version: true,
        createdAt: true,
        checks: { orderBy: { position: 'asc' }, select: { label: true, lesson: true } },
      },
    }),
    countByVersion(repairId, clock),
    db.claim.findMany({
      where: { certificate: { job: { repairId } }, ruling: { in: ['covered', 'partly'] } },
      orderBy: { openedAt: 'desc' },
      select: { number: true, openedOn: true, cause: true, ruling: true, secondLookAt: true, lesson: true },
    }),
  ]);
  const checks = taughtChecks(sheets, counts).flatMap((taught) => {
    const first = sheets.find(({ version }) => version === taught.version);
    return first ? [{ ...taught, since: dayInZone(first.createdAt, timeZone) }] : [];
  });
  const ruled = rows.flatMap((row) => {
    const ruling = readRuling(row);
    return ruling?.isFinal ? [{ ...row, cause: ruling.cause }] : [];
  });
  return {
    checks,
    ruled: ruled.length,
    claims: ruled.slice(0, CLAIMS_SHOWN).map((claim) => ({
      number: claim.number,
      openedOn: dayFromDate(claim.openedOn),
      cause: causeRow(claim.cause).label,
      lesson: claim.lesson ?? '',
      check: checks.find(({ lesson }) => lesson === claim.number)?.label ?? null,
    })),
  };
}

/** Units of a repair by the version of the sheet they were proved on, the oldest first; those with shorter cover are in no count. */
export function countByVersion(repairId: string, clock: CoverClock): Promise<VersionCount[]> {
  return db.$queryRaw<VersionCount[]>`
    WITH ${unitRows(clock, unitsWhere({ of: { grouping: 'repair', id: repairId } }))}
    SELECT s."version", (COUNT(*) FILTER (WHERE ${IS_WATCHED}))::int AS watched,
      (COUNT(*) FILTER (WHERE ${IS_BACK}))::int AS returned, (COUNT(*) FILTER (WHERE ${IS_YOUNG}))::int AS young
    FROM unit u JOIN "check_sheet" s ON s."id" = u."sheetId"
    GROUP BY s."version" ORDER BY s."version"`;
}
