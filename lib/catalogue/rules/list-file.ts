import { openText } from './list-cells';
import {
  type Cells,
  COLUMN_KEYS,
  type ColumnKey,
  emptyCells,
  headOf,
  kindOf,
  type ListSettings,
} from './list-columns';
import type { ListProblem, ListRow } from './list-rows';

/** The headings of the list, in their order. */
export function listHeads(settings: ListSettings): string[] {
  return COLUMN_KEYS.map((key) => headOf(key, settings));
}

/** How many of a line's cells are headings of the list, to tell which sign separates the cells of a file. */
export function headsIn(line: readonly string[], settings: ListSettings): number {
  return line.filter((cell) => columnOf(cell, settings) !== null).length;
}

/**
 * The rows of a list out of the lines of its file, whose first line holds the headings, in any order and with or without
 * capitals. Lines without text are left out. A heading that is missing, unknown or there twice is a fault of row 1, and then no
 * row is read, since nobody could say what its cells mean. A text behind the last heading is a fault of its row.
 */
export function readLines(
  lines: readonly (readonly string[])[],
  settings: ListSettings,
): { rows: ListRow[]; problems: ListProblem[] } {
  const [heads = [], ...rest] = lines;
  const columns = heads.map((head) => columnOf(head, settings));
  const problems = headProblems(heads, columns, settings);
  if (problems.length > 0) return { rows: [], problems };
  const rows = rest.flatMap((line, i): ListRow[] => {
    const row = i + 2;
    if (line.every((cell) => cell.trim() === '')) return [];
    if (line.slice(columns.length).some((cell) => cell.trim() !== ''))
      problems.push({ row, column: null, message: 'There is text behind the last column' });
    return [{ row, cells: cellsOf(line, columns) }];
  });
  return { rows, problems };
}

function cellsOf(line: readonly string[], columns: readonly (ColumnKey | null)[]): Cells {
  const cells = emptyCells();
  columns.forEach((column, i) => {
    if (column === null) return;
    const text = (line[i] ?? '').replaceAll('\r\n', '\n').trim();
    // Entries of a list carry their guards one by one.
    cells[column] = kindOf(column) === 'list' ? text : openText(text).trim();
  });
  return cells;
}

function columnOf(head: string, settings: ListSettings): ColumnKey | null {
  const wanted = head.trim().toLowerCase();
  return COLUMN_KEYS.find((key) => headOf(key, settings).toLowerCase() === wanted) ?? null;
}

function headProblems(
  heads: readonly string[],
  columns: readonly (ColumnKey | null)[],
  settings: ListSettings,
): ListProblem[] {
  const at = (column: ColumnKey | null, message: string) => ({ row: 1, column, message });
  const unknown = heads.flatMap((head, i) =>
    columns[i] === null && head.trim() !== '' ? [at(null, `There is no column “${head.trim()}”`)] : [],
  );
  const others = COLUMN_KEYS.flatMap((key) => {
    const times = columns.filter((column) => column === key).length;
    if (times === 0) return [at(key, `The column “${headOf(key, settings)}” is missing`)];
    return times > 1 ? [at(key, `The column “${headOf(key, settings)}” is there ${times} times`)] : [];
  });
  return [...unknown, ...others];
}
