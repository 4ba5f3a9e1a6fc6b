import { type Day, dayFromDate, dayInZone } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { causeRow } from '@/lib/warranty/rules/causes';
import { readRuling } from '@/lib/warranty/stored-ruling';
import type { CoverClock } from './cover-sql';
import { type Taught, taughtChecks } from './rules/taught';
import { countByVersion } from './version-counts';

/** A lesson on a repair's sheet (rules/taught.ts), with the day its first version was written. */
export type TaughtCheck = Taught & { since: Day };

/** A covered claim of a repair with what it taught; `lesson` is the note, `check` what came of it. */
export type LearntClaim = {
  number: string;
  openedOn: Day;
  cause: string;
  lesson: string;
  /** null where none came of it; `isElsewhere`: it is on the sheet of another repair of the model */
  check: { label: string; isElsewhere: boolean } | null;
};

export type Learning = { checks: TaughtCheck[]; claims: LearntClaim[]; ruled: number };

const CLAIMS_SHOWN = 12;

/**
 * The learning loop of one repair. A unit counts by the version of the sheet it was proved on, not by its date: units
 * booked before a lesson are proved on the old sheet, however late they leave. Claims are those of units whose job was under the repair,
 * of units that failed again in it beside another, and those that taught its sheet.
 */
export async function readLearning(repairId: string, clock: CoverClock, timeZone: string): Promise<Learning> {
  const [allSheets, counts] = await Promise.all([
    db.checkSheet.findMany({
      // Of its model: what a claim on it taught may stand on the sheet of a repair that was done beside it.
      where: { repair: { model: { repairs: { some: { id: repairId } } } } },
      orderBy: { version: 'asc' },
      select: {
        repairId: true,
        version: true,
        createdAt: true,
        checks: { orderBy: { position: 'asc' }, select: { label: true, lesson: true } },
      },
    }),
    countByVersion(repairId, clock),
  ]);
  const sheets = allSheets.filter((sheet) => sheet.repairId === repairId);
  const checks = taughtChecks(sheets, counts).flatMap((taught) => {
    const first = sheets.find(({ version }) => version === taught.version);
    return first ? [{ ...taught, since: dayInZone(first.createdAt, timeZone) }] : [];
  });
  const rows = await db.claim.findMany({
    where: {
      ruling: { in: ['covered', 'partly'] },
      OR: [
        { certificate: { job: { repairId } } },
        // What the customer paid for beside a claim is work of its own.
        { job: { besides: { some: { isByPrice: false, sheet: { repairId } } } } },
        { number: { in: checks.map(({ lesson }) => lesson) } },
      ],
    },
    orderBy: { openedAt: 'desc' },
    select: { number: true, openedOn: true, cause: true, ruling: true, secondLookAt: true, lesson: true },
  });
  const ruled = rows.flatMap((row) => {
    const ruling = readRuling(row);
    return ruling?.isFinal ? [{ ...row, cause: ruling.cause }] : [];
  });
  const elsewhere = new Map(
    allSheets.flatMap((sheet) =>
      sheet.checks.flatMap(({ label, lesson }) => (lesson ? [[lesson, label] as const] : [])),
    ),
  );
  const checkOf = (claim: string): LearntClaim['check'] => {
    const own = checks.find(({ lesson }) => lesson === claim);
    const other = elsewhere.get(claim);
    if (own) return { label: own.label, isElsewhere: false };
    return other === undefined ? null : { label: other, isElsewhere: true };
  };
  return {
    checks,
    ruled: ruled.length,
    claims: ruled.slice(0, CLAIMS_SHOWN).map((claim) => ({
      number: claim.number,
      openedOn: dayFromDate(claim.openedOn),
      cause: causeRow(claim.cause).label,
      lesson: claim.lesson ?? '',
      check: checkOf(claim.number),
    })),
  };
}
