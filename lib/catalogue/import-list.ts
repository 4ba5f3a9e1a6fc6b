import { createHash } from 'node:crypto';
import { isUniqueViolation } from '@/lib/db/errors';
import { type Tx, transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { readHeldWorkshop } from '@/lib/workshop/records';
import { readCsv } from './csv';
import { listSettings, readKnownCatalogue, readReferred } from './list-records';
import type { ListSettings } from './rules/list-columns';
import { byPlace } from './rules/list-rows';
import { type ImportPlan, planImport } from './rules/plan-import';
import { writeImport } from './write-import';
import type { ChangedBy } from './write-repair-prices';

/** A plan as it was shown, with a mark of it, so that exactly this is imported or nothing. */
export type DryRun = {
  plan: ImportPlan;
  /** Rows of the file, without its headings. */
  rows: number;
  settings: ListSettings;
  /** Changes with the contents of the plan. */
  mark: string;
};

/** Most rows of one file; the largest price list that was measured has a fourth of it. */
export const MOST_ROWS = 20_000;

/** Says what importing a file would add and change and everything that is wrong with it, and writes nothing. */
export async function tryImport(text: string): Promise<DryRun> {
  return transaction((tx) => dryRun(tx, text));
}

/**
 * Imports the file all at once or not at all, and returns what was done. It is planned again inside the transaction, on tables and
 * settings that nobody else can write meanwhile; where that plan is not the one whose `mark` the person saw, since somebody changed the
 * catalogue or chose another file, it is a conflict. Refuses a file with a fault.
 */
export async function importList(o: { text: string; mark: string; by: ChangedBy }): Promise<DryRun> {
  try {
    return await transaction(async (tx) => {
      await readHeldWorkshop(tx);
      await tx.$executeRaw`LOCK TABLE "family", "model", "repair", "repair_part" IN SHARE ROW EXCLUSIVE MODE`;
      await tx.$executeRaw`LOCK TABLE "policy", "part" IN SHARE MODE`;
      const run = await dryRun(tx, o.text);
      if (run.mark !== o.mark) throw moved();
      if (run.plan.problems.length > 0)
        throw new Refusal('invalid', 'The file has faults; nothing was imported. They are listed below.');
      await writeImport(tx, run.plan, o.by);
      return run;
    });
  } catch (error) {
    if (isUniqueViolation(error)) throw moved();
    throw error;
  }
}

async function dryRun(tx: Tx, text: string): Promise<DryRun> {
  const settings = await listSettings(tx);
  const { rows, problems } = readCsv(text, settings);
  if (rows.length > MOST_ROWS)
    throw new Refusal('invalid', `A file may have ${MOST_ROWS} rows, this one has ${rows.length}.`);
  const known = await readKnownCatalogue(tx);
  const plan = planImport({ rows, known, referred: await readReferred(tx), settings });
  const whole = { ...plan, problems: [...problems, ...plan.problems].sort(byPlace) };
  const mark = createHash('sha256').update(JSON.stringify(whole)).digest('base64url');
  return { plan: whole, rows: rows.length, settings, mark };
}

function moved(): Refusal {
  return new Refusal(
    'conflict',
    'The catalogue or the file changed since you looked. Nothing was imported; look again at what would change.',
  );
}
