/*
 * Words of the files (file-*, list-*, check-file, policy-file): layout: the columns of one kind of file, in their order. head: the
 * heading of a column. cell: text as a person reads it; that of a list holds entries separated by semicolons.
 */

/** The columns of a file by their keys, in the order it is written in. */
export type Layout<K extends string> = readonly { key: K; head: string; kind: 'text' | 'list' }[];

/** A row of a file with its place, counted as a spreadsheet counts: the headings are row 1. */
export type FileRow<K extends string> = { row: number; cells: Record<K, string> };

/** What is wrong, where; a null column is a fault of the row as a whole. */
export type FileProblem<K extends string> = { row: number; column: K | null; message: string };

/** One cell that an import changes, as it is and as it would be. */
export type CellChange<K extends string> = { column: K; before: string; after: string };

/** Faults in the order of the file: row by row, and in a row by its columns. */
export function byPlaceIn<K extends string>(keys: readonly K[]) {
  const order = new Map(keys.map((key, i) => [key, i]));
  const placeOf = (column: K | null) => (column === null ? -1 : (order.get(column) ?? -1));
  return (a: FileProblem<K>, b: FileProblem<K>): number =>
    a.row - b.row || placeOf(a.column) - placeOf(b.column);
}

/** What differs between two rows, column by column; a cell that is left out is empty. */
export function cellChanges<K extends string>(
  keys: readonly K[],
  before: Partial<Record<K, string>>,
  after: Partial<Record<K, string>>,
): CellChange<K>[] {
  return keys.flatMap((column) => {
    const [was, is] = [before[column] ?? '', after[column] ?? ''];
    return was === is ? [] : [{ column, before: was, after: is }];
  });
}
