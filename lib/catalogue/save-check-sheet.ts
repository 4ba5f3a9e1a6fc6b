import { CHECK_PROBLEM_SENTENCES, type CheckDraft, checkProblems } from '@/lib/bench/rules/check-problems';
import { isUniqueViolation } from '@/lib/db/errors';
import { type Tx, transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { isSameSheet } from './rules/same';
import { readCheck } from './stored';

export type SheetWrite = {
  repairId: string;
  /** The version the change was made from. */
  basedOn: number;
  change: (checks: readonly CheckDraft[]) => readonly CheckDraft[];
  now: Date;
};

/** Longest sheet: past it nobody reads the lines any more (common practice, no source). */
export const MOST_CHECKS = 60;

/**
 * Writes the next version of a repair's check sheet, made from its newest one, and returns its number; a change that changes
 * nothing writes nothing. Jobs keep the version they were booked under. Works inside the caller's transaction, so that a ruling and
 * the check it taught are kept together. Refuses a check that could not fail, an empty sheet, and a newest version that is not `basedOn`.
 */
export async function writeCheckSheet(tx: Tx, write: SheetWrite): Promise<number> {
  const newest = await tx.checkSheet.findFirst({
    where: { repairId: write.repairId },
    orderBy: { version: 'desc' },
    include: { checks: { orderBy: { position: 'asc' } } },
  });
  const version = newest?.version ?? 0;
  if (version !== write.basedOn) throw sheetMoved();
  const before = (newest?.checks ?? []).map(readCheck);
  const checks = write.change(before);
  refuseChecks(checks);
  if (isSameSheet(before, checks)) return version;
  const rows = checks.map((check, i) => ({ ...check, position: i + 1 }));
  await tx.checkSheet.create({
    data: { repairId: write.repairId, version: version + 1, createdAt: write.now, checks: { create: rows } },
  });
  return version + 1;
}

/**
 * writeCheckSheet as a use case of its own.
 *
 * Two owners may change the same sheet at once. Both read version n and write n + 1; the unique index lets the first one
 * through and the second is told that the sheet has moved on.
 */
export async function saveCheckSheet(write: SheetWrite): Promise<number> {
  try {
    return await transaction((tx) => writeCheckSheet(tx, write));
  } catch (error) {
    if (isUniqueViolation(error, 'check_sheet_repairId_version_key')) throw sheetMoved();
    throw error;
  }
}

/** A change that puts checks at the end of the sheet. */
export function adding(...added: readonly CheckDraft[]): SheetWrite['change'] {
  return (checks) => [...checks, ...added];
}

/** A change that replaces the check at a position, counted from 1; the lesson it was taught by stays with it. */
export function replacing(position: number, check: CheckDraft): SheetWrite['change'] {
  return (checks) =>
    checks.map((each, i) => (i === position - 1 ? { ...check, lesson: check.lesson ?? each.lesson } : each));
}

/** A change that takes the check at a position off the sheet. */
export function removing(position: number): SheetWrite['change'] {
  return (checks) => checks.filter((_, i) => i !== position - 1);
}

/** A change that moves the check at a position one place up or down; at the end of the list it stays. */
export function moving(position: number, by: -1 | 1): SheetWrite['change'] {
  return (checks) => {
    const moved = checks[position - 1];
    const other = checks[position - 1 + by];
    if (!moved || !other) return checks;
    return checks.map((each, i) => (i === position - 1 ? other : i === position - 1 + by ? moved : each));
  };
}

function refuseChecks(checks: readonly CheckDraft[]): void {
  if (checks.length === 0)
    throw new Refusal('invalid', 'A sheet needs at least one check: an empty one proves nothing.');
  if (checks.length > MOST_CHECKS)
    throw new Refusal('invalid', `A sheet holds at most ${MOST_CHECKS} checks.`);
  for (const check of checks) {
    const [problem] = checkProblems(check);
    if (problem)
      throw new Refusal('invalid', `${check.label || 'A check'}: ${CHECK_PROBLEM_SENTENCES[problem]}`);
  }
}

function sheetMoved(): Refusal {
  return new Refusal(
    'conflict',
    'Somebody else changed this check sheet meanwhile. Look at it again before you save.',
  );
}
