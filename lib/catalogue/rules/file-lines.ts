import type { FileProblem, FileRow, Layout } from './file-layout';
import { openText } from './list-cells';

/** How many of a line's cells are headings of a layout, to tell which file it is and which sign separates its cells. */
export function headsIn<K extends string>(line: readonly string[], layout: Layout<K>): number {
  return line.filter((cell) => columnOf(cell, layout) !== null).length;
}

/**
 * The rows of a file out of its lines, the first of which holds the headings, in any order and with or without
 * capitals. Lines without text are left out. A heading that is missing, unknown or there twice is a fault of row 1, and then no
 * row is read, since nobody could say what its cells mean. A text behind the last heading is a fault of its row.
 */
export function readLines<K extends string>(
  lines: readonly (readonly string[])[],
  layout: Layout<K>,
): { rows: FileRow<K>[]; problems: FileProblem<K>[] } {
  const [heads = [], ...rest] = lines;
  const columns = heads.map((head) => columnOf(head, layout));
  const problems = headProblems(heads, columns, layout);
  if (problems.length > 0) return { rows: [], problems };
  const places = new Map(columns.map((column, i) => [column, i]));
  const rows = rest.flatMap((line, i): FileRow<K>[] => {
    const row = i + 2;
    if (line.every((cell) => cell.trim() === '')) return [];
    if (line.slice(columns.length).some((cell) => cell.trim() !== ''))
      problems.push({ row, column: null, message: 'There is text behind the last column' });
    return [{ row, cells: cellsOf(line, places, layout) }];
  });
  return { rows, problems };
}

function cellsOf<K extends string>(
  line: readonly string[],
  places: ReadonlyMap<K | null, number>,
  layout: Layout<K>,
): Record<K, string> {
  const cells = layout.map(({ key, kind }) => {
    const text = (line[places.get(key) ?? line.length] ?? '').replaceAll('\r\n', '\n').trim();
    // Entries of a list carry their guards one by one.
    return [key, kind === 'list' ? text : openText(text).trim()];
  });
  return Object.fromEntries(cells) as Record<K, string>;
}

function columnOf<K extends string>(head: string, layout: Layout<K>): K | null {
  const wanted = head.trim().toLowerCase();
  return layout.find((column) => column.head.toLowerCase() === wanted)?.key ?? null;
}

function headProblems<K extends string>(
  heads: readonly string[],
  columns: readonly (K | null)[],
  layout: Layout<K>,
): FileProblem<K>[] {
  const at = (column: K | null, message: string) => ({ row: 1, column, message });
  const unknown = heads.flatMap((head, i) =>
    columns[i] === null && head.trim() !== '' ? [at(null, `There is no column “${head.trim()}”`)] : [],
  );
  const others = layout.flatMap(({ key, head }) => {
    const times = columns.filter((column) => column === key).length;
    if (times === 0) return [at(key, `The column “${head}” is missing`)];
    return times > 1 ? [at(key, `The column “${head}” is there ${times} times`)] : [];
  });
  return [...unknown, ...others];
}
