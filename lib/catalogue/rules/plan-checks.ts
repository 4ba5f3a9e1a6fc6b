import type { CheckDraft } from '@/lib/bench/rules/check-problems';
import { type AlignedChecks, alignChecks } from './align-checks';
import {
  CHECK_COLUMNS,
  type CheckColumn,
  type Connector,
  checkCells,
  type KnownSheet,
  type PlacedCheck,
  plainCheck,
  readCheckRow,
} from './check-file';
import { byPlaceIn, type CellChange, cellChanges, type FileProblem, type FileRow } from './file-layout';
import { LIMITS } from './list-limits';

type CheckRow = FileRow<CheckColumn>;
type CheckFault = FileProblem<CheckColumn>;

/** What becomes of one check of a sheet; one that is taken off has no row. */
export type CheckChange = {
  row: number | null;
  change: 'added' | 'changed' | 'off';
  label: string;
  fields: CellChange<CheckColumn>[];
};

/** A sheet that gets its next version, with the whole of what it asks for then. */
export type SheetChange = {
  /** The first row that names it. */
  row: number;
  repairId: string;
  modelAddress: string;
  repairAddress: string;
  /** The next version. */
  version: number;
  checks: CheckDraft[];
  changes: CheckChange[];
};

export type ChecksPlan = {
  sheets: SheetChange[];
  /** How many sheets the file names and leaves as they are. */
  unchanged: number;
  problems: CheckFault[];
};

/**
 * Compares the rows of a check file with the newest sheets: which get a next version, what changes in it, and everything that is wrong.
 * All rows of a repair are its whole sheet, in the order of their places: a check without a row is taken off. A repair without a row
 * keeps its sheet. Nothing may be written while there is a problem; a sheet of which a row could not be read is left out.
 * Example: the newest sheets' own rows give no change and no problem.
 */
export function planChecks(o: {
  rows: readonly CheckRow[];
  known: readonly KnownSheet[];
  connectors: readonly Connector[];
}): ChecksPlan {
  const problems: CheckFault[] = [];
  const byAddress = new Map(o.known.map((sheet) => [addressOf(sheet), sheet]));
  const models = new Set(o.known.map((sheet) => sheet.modelAddress));
  const rowsOf = new Map<KnownSheet, CheckRow[]>();
  for (const row of o.rows) {
    const sheet = byAddress.get(addressOf(row.cells));
    if (!sheet) {
      problems.push({ row: row.row, ...missingRepair(row, models) });
      continue;
    }
    const group = rowsOf.get(sheet);
    if (group) group.push(row);
    else rowsOf.set(sheet, [row]);
  }
  const compared = [...rowsOf].flatMap(([sheet, rows]) => {
    const placed = readSheet(sheet, rows, o.connectors, problems);
    return placed ? [sheetChange(sheet, rows[0]?.row ?? 1, placed, o.connectors)] : [];
  });
  const sheets = compared.filter(({ changes }) => changes.length > 0);
  return {
    sheets,
    unchanged: compared.length - sheets.length,
    problems: problems.sort(byPlaceIn(CHECK_COLUMNS)),
  };
}

const addressOf = (o: { modelAddress: string; repairAddress: string }) =>
  `${o.modelAddress}#${o.repairAddress}`;

function missingRepair({ cells }: CheckRow, models: ReadonlySet<string>): Omit<CheckFault, 'row'> {
  const { modelAddress, repairAddress } = cells;
  if (!models.has(modelAddress))
    return {
      column: 'modelAddress',
      message:
        modelAddress === '' ? 'Write the address of the model' : `No model ${modelAddress} has repairs`,
    };
  return {
    column: 'repairAddress',
    message:
      repairAddress === ''
        ? 'Write the address of the repair'
        : `There is no repair ${repairAddress} of this model`,
  };
}

type ReadRow = PlacedCheck & { row: number };

/** The checks of a sheet in the order of their places; null, and every fault told, where one cannot be read. */
function readSheet(
  sheet: KnownSheet,
  rows: readonly CheckRow[],
  connectors: readonly Connector[],
  problems: CheckFault[],
): ReadRow[] | null {
  const before = problems.length;
  const lessons = sheet.checks.flatMap(({ lesson }) => lesson ?? []);
  const read = rows.flatMap(({ row, cells }): ReadRow[] => {
    const placed = readCheckRow(cells, { connectors, lessons }, (column, message) => {
      problems.push({ row, column, message });
    });
    return placed ? [{ ...placed, row }] : [];
  });
  const rowAt = new Map<number, number>();
  for (const { row, place } of read) {
    const earlier = rowAt.get(place);
    if (earlier === undefined) rowAt.set(place, row);
    else problems.push({ row, column: 'place', message: `Row ${earlier} has this place on the same sheet` });
  }
  const over = rows[LIMITS.checks];
  if (over)
    problems.push({ row: over.row, column: null, message: `A sheet holds at most ${LIMITS.checks} checks` });
  return problems.length > before ? null : read.sort((a, b) => a.place - b.place);
}

function sheetChange(
  sheet: KnownSheet,
  row: number,
  read: readonly ReadRow[],
  connectors: readonly Connector[],
): SheetChange {
  const before = sheet.checks.map(plainCheck);
  const checks = read.map(({ check }) => check);
  return {
    row,
    repairId: sheet.repairId,
    modelAddress: sheet.modelAddress,
    repairAddress: sheet.repairAddress,
    version: sheet.version + 1,
    checks,
    changes: checkChanges(before, read, alignChecks(before, checks), connectors),
  };
}

function checkChanges(
  before: readonly CheckDraft[],
  read: readonly ReadRow[],
  aligned: AlignedChecks,
  connectors: readonly Connector[],
): CheckChange[] {
  const kept = read.flatMap(({ row, check }, i): CheckChange[] => {
    const from = aligned.from[i] ?? null;
    const was = from === null ? undefined : before[from];
    if (from === null || was === undefined) return [{ row, change: 'added', label: check.label, fields: [] }];
    const cells = (each: CheckDraft, place: number) => checkCells(each, place + 1, connectors);
    // A place that only shifts, since a check above it came or went, is no change of this check.
    const shown = aligned.moved.has(i) ? i : from;
    const fields = cellChanges(CHECK_COLUMNS, cells(was, from), cells(check, shown));
    return fields.length === 0 ? [] : [{ row, change: 'changed', label: was.label, fields }];
  });
  const off = aligned.off.map((i): CheckChange => {
    return { row: null, change: 'off', label: before[i]?.label ?? '', fields: [] };
  });
  return [...kept, ...off];
}
