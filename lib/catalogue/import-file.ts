import { createHash } from 'node:crypto';
import { isUniqueViolation } from '@/lib/db/errors';
import { type Tx, transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { readHeldWorkshop } from '@/lib/workshop/records';
import { readConnectors, readKnownSheets } from './check-file-records';
import { headsFound, readCsv } from './csv';
import { listSettings, readKnownCatalogue, readReferred } from './list-records';
import { readKnownPolicies } from './policy-file-records';
import { CHECK_COLUMNS, CHECK_LAYOUT } from './rules/check-file';
import type { FileKind, FilePlan } from './rules/file-kinds';
import { byPlaceIn, type FileProblem, type FileRow, type Layout } from './rules/file-layout';
import { COLUMN_KEYS, type ListSettings, listLayout } from './rules/list-columns';
import { planChecks } from './rules/plan-checks';
import { planImport } from './rules/plan-import';
import { planPolicies } from './rules/plan-policies';
import { POLICY_COLUMNS, POLICY_LAYOUT } from './rules/policy-file';
import { writeImport } from './write-import';
import { writeImportChecks } from './write-import-checks';
import { writeImportPolicies } from './write-import-policies';
import type { ChangedBy } from './write-repair-prices';

/** A plan as it was shown, with a mark of it, so that exactly this is imported or nothing. */
export type DryRun = FilePlan & {
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
  return transaction(async (tx) => {
    const settings = await listSettings(tx);
    return dryRun(tx, text, kindOfFile(text, settings), settings);
  });
}

/**
 * Imports the file all at once or not at all, and returns what was done. It is planned again inside the transaction, on tables and
 * settings that nobody else can write meanwhile; where that plan is not the one whose `mark` the person saw, since somebody changed the
 * catalogue or chose another file, it is a conflict. Refuses a file with a fault.
 */
export async function importFile(o: { text: string; mark: string; by: ChangedBy }): Promise<DryRun> {
  try {
    return await transaction(async (tx) => {
      await readHeldWorkshop(tx);
      const settings = await listSettings(tx);
      const kind = kindOfFile(o.text, settings);
      await hold(tx, kind);
      const run = await dryRun(tx, o.text, kind, settings);
      if (run.mark !== o.mark) throw moved();
      if (run.plan.problems.length > 0)
        throw new Refusal('invalid', 'The file has faults; nothing was imported. They are listed below.');
      await write(tx, run, o.by);
      return run;
    });
  } catch (error) {
    if (isUniqueViolation(error)) throw moved();
    throw error;
  }
}

/** Which of the three files a text is: the one whose headings it has the most of. */
function kindOfFile(text: string, settings: ListSettings): FileKind {
  const found: [FileKind, number][] = [
    ['catalogue', headsFound(text, listLayout(settings))],
    ['checks', headsFound(text, CHECK_LAYOUT)],
    ['policies', headsFound(text, POLICY_LAYOUT)],
  ];
  const [best] = found.sort(([, a], [, b]) => b - a);
  if (!best || best[1] === 0)
    throw new Refusal(
      'invalid',
      'Its first row has none of the headings. Use a downloaded file as the pattern, and keep its headings.',
    );
  return best[0];
}

// What a plan rests on, held in the order in which a repair is added by hand: the repair, then its sheet.
async function hold(tx: Tx, kind: FileKind): Promise<void> {
  switch (kind) {
    case 'catalogue':
      await tx.$executeRaw`LOCK TABLE "family", "model", "repair", "repair_part" IN SHARE ROW EXCLUSIVE MODE`;
      await tx.$executeRaw`LOCK TABLE "policy", "part" IN SHARE MODE`;
      return;
    case 'checks':
      await tx.$executeRaw`LOCK TABLE "family", "model", "repair", "pin_table" IN SHARE MODE`;
      await tx.$executeRaw`LOCK TABLE "check_sheet", "check_item" IN SHARE ROW EXCLUSIVE MODE`;
      return;
    case 'policies':
      // Who changes a policy by hand holds its row first; a weaker lock would let both wait for each other.
      await tx.$executeRaw`LOCK TABLE "policy", "policy_version" IN EXCLUSIVE MODE`;
  }
}

async function dryRun(tx: Tx, text: string, kind: FileKind, settings: ListSettings): Promise<DryRun> {
  const { rows, ...planned } = await planOf(tx, text, kind, settings);
  const mark = createHash('sha256').update(JSON.stringify(planned)).digest('base64url');
  return { ...planned, rows, settings, mark };
}

async function planOf(
  tx: Tx,
  text: string,
  kind: FileKind,
  settings: ListSettings,
): Promise<FilePlan & { rows: number }> {
  switch (kind) {
    case 'catalogue': {
      const { rows, problems } = readRows(text, listLayout(settings));
      const known = await readKnownCatalogue(tx);
      const plan = planImport({ rows, known, referred: await readReferred(tx), settings });
      return { kind, rows: rows.length, plan: withProblems(plan, problems, COLUMN_KEYS) };
    }
    case 'checks': {
      const { rows, problems } = readRows(text, CHECK_LAYOUT);
      const known = await readKnownSheets(tx);
      const plan = planChecks({ rows, known, connectors: await readConnectors(tx) });
      return { kind, rows: rows.length, plan: withProblems(plan, problems, CHECK_COLUMNS) };
    }
    case 'policies': {
      const { rows, problems } = readRows(text, POLICY_LAYOUT);
      const plan = planPolicies({ rows, known: await readKnownPolicies(tx) });
      return { kind, rows: rows.length, plan: withProblems(plan, problems, POLICY_COLUMNS) };
    }
  }
}

function readRows<K extends string>(
  text: string,
  layout: Layout<K>,
): { rows: FileRow<K>[]; problems: FileProblem<K>[] } {
  const read = readCsv(text, layout);
  if (read.rows.length > MOST_ROWS)
    throw new Refusal('invalid', `A file may have ${MOST_ROWS} rows, this one has ${read.rows.length}.`);
  return read;
}

function withProblems<K extends string, P extends { problems: FileProblem<K>[] }>(
  plan: P,
  problems: readonly FileProblem<K>[],
  keys: readonly K[],
): P {
  return { ...plan, problems: [...problems, ...plan.problems].sort(byPlaceIn(keys)) };
}

async function write(tx: Tx, run: DryRun, by: ChangedBy): Promise<void> {
  switch (run.kind) {
    case 'catalogue':
      return writeImport(tx, run.plan, by);
    case 'checks':
      return writeImportChecks(tx, run.plan.sheets, by.now);
    case 'policies':
      return writeImportPolicies(tx, run.plan.policies, by.now);
  }
}

function moved(): Refusal {
  return new Refusal(
    'conflict',
    'The catalogue or the file changed since you looked. Nothing was imported; look again at what would change.',
  );
}
