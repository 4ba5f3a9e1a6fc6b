import { CHECK_PROBLEM_SENTENCES, type CheckDraft, checkProblems } from '@/lib/bench/rules/check-problems';
import type { Tx } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { LIMITS } from './rules/list-limits';
import { isSameSheet } from './rules/same';
import type { SheetChange } from './rules/sheet-changes';
import { readCheck } from './stored';

export type SheetWrite = {
  repairId: string;
  /** The version the change was made from. */
  basedOn: number;
  change: SheetChange;
  now: Date;
};

/**
 * Writes the next version of a repair's check sheet, made from its newest one, and returns its number; a change that changes
 * nothing writes nothing. Jobs keep the version they were booked under until an owner puts one on the newest (lib/bench/take-newest-sheet.ts). Works inside the caller's transaction, so that a ruling and
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

function refuseChecks(checks: readonly CheckDraft[]): void {
  if (checks.length === 0)
    throw new Refusal('invalid', 'A sheet needs at least one check: an empty one proves nothing.');
  if (checks.length > LIMITS.checks)
    throw new Refusal('invalid', `A sheet holds at most ${LIMITS.checks} checks.`);
  for (const check of checks) {
    const [problem] = checkProblems(check);
    if (problem)
      throw new Refusal('invalid', `${check.label || 'A check'}: ${CHECK_PROBLEM_SENTENCES[problem]}`);
  }
}

export function sheetMoved(): Refusal {
  return new Refusal(
    'conflict',
    'Somebody else changed this check sheet meanwhile. Look at it again before you save.',
  );
}
