import { type Cells, COLUMN_KEYS, type ColumnKey } from './list-columns';

/** A row of the file with its place, counted as a spreadsheet counts: the headings are row 1. */
export type ListRow = { row: number; cells: Cells };

/** What is wrong, where; a null column is a fault of the row as a whole. */
export type ListProblem = { row: number; column: ColumnKey | null; message: string };

const ORDER = new Map(COLUMN_KEYS.map((key, i) => [key, i]));
const placeOf = (column: ColumnKey | null) => (column === null ? -1 : (ORDER.get(column) ?? -1));

/** Faults in the order of the file: row by row, and in a row by its columns. */
export function byPlace(a: ListProblem, b: ListProblem): number {
  return a.row - b.row || placeOf(a.column) - placeOf(b.column);
}
