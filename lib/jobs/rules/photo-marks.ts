/*
 * Words. mark: a place on a photo that is pointed at, with a number and a few words. Its point is in fractions of the photo, from the
 * upper left corner. cell: a field of a grid of eight columns A to H and six rows, by which a mark can be put without a pointer.
 */

export type PhotoMark = { x: number; y: number; text: string };

export const MOST_MARKS = 6;
export const MOST_LETTERS = 80;
export const COLUMNS: readonly string[] = ['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H'];
export const ROWS: readonly string[] = ['1', '2', '3', '4', '5', '6'];

/** The cell a point lies in: { x: 0.3, y: 0.5 } is C4. Points on the last edge belong to the last cell. */
export function cellOf({ x, y }: { x: number; y: number }): { column: string; row: string } {
  const at = (value: number, count: number) => Math.min(count - 1, Math.max(0, Math.floor(value * count)));
  return {
    column: COLUMNS[at(x, COLUMNS.length)] ?? 'A',
    row: ROWS[at(y, ROWS.length)] ?? '1',
  };
}

/** The middle of a cell, to a thousandth; null for one the grid does not have. Example: C4 is { x: 0.313, y: 0.583 }. */
export function middleOf(column: string, row: string): { x: number; y: number } | null {
  const [at, down] = [COLUMNS.indexOf(column), ROWS.indexOf(row)];
  if (at < 0 || down < 0) return null;
  return { x: rounded((at + 0.5) / COLUMNS.length), y: rounded((down + 0.5) / ROWS.length) };
}

const rounded = (value: number) => Math.round(value * 1000) / 1000;

export type GivenMark = { column: string; row: string; x: string; y: string; text: string };

/**
 * The mark that a filled-in line of the form gives: the exact point where it was tapped while it lies in the chosen cell, the middle
 * of the cell otherwise; null for a line without a cell, or with one the grid does not have.
 */
export function markOf({ column, row, x, y, text }: GivenMark): PhotoMark | null {
  const middle = middleOf(column, row);
  if (!middle) return null;
  const point = { x: fraction(x), y: fraction(y) };
  const isExact = point.x !== null && point.y !== null;
  const exact = isExact ? { x: point.x ?? 0, y: point.y ?? 0 } : null;
  const cell = exact && cellOf(exact);
  const place = exact && cell?.column === column && cell.row === row ? exact : middle;
  return { ...place, text: text.trim().slice(0, MOST_LETTERS) };
}

function fraction(text: string): number | null {
  if (!/^(0|1|0?\.\d{1,6}|1\.0{1,6})$/.test(text.trim())) return null;
  return rounded(Number(text));
}

/** Marks as they are stored, read back; what is not a mark is left out. */
export function readMarks(stored: unknown): PhotoMark[] {
  if (!Array.isArray(stored)) return [];
  return stored.filter(isMark).slice(0, MOST_MARKS);
}

function isMark(value: unknown): value is PhotoMark {
  if (typeof value !== 'object' || value === null) return false;
  if (!('x' in value && 'y' in value && 'text' in value)) return false;
  const isFraction = (number: unknown) => typeof number === 'number' && number >= 0 && number <= 1;
  return isFraction(value.x) && isFraction(value.y) && typeof value.text === 'string';
}

/** The marks in words, for those who do not see them: '1: crack at the collar (C4). 2: no words (F2).' */
export function marksText(marks: readonly PhotoMark[]): string {
  return marks
    .map((mark, at) => {
      const { column, row } = cellOf(mark);
      return `${at + 1}: ${mark.text || 'no words'} (${column}${row}).`;
    })
    .join(' ');
}
