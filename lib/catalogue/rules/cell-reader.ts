import { splitEntries } from './list-cells';
import { LIMITS } from './list-limits';

/** Takes down what is wrong with a cell, in words for the person who wrote it. */
export type CellTell<K extends string> = (column: K, message: string) => void;

/** Reads the cells of one row, and tells every fault where it stands. */
export function cellReader<K extends string>(cells: Record<K, string>, tell: CellTell<K>) {
  let faults = 0;
  const wrong: CellTell<K> = (column, message) => {
    faults += 1;
    tell(column, message);
  };
  const upTo = (column: K, most: number) => {
    if (cells[column].length > most) wrong(column, `Use ${most} characters or fewer`);
    return cells[column];
  };
  return {
    wrong,
    isSound: () => faults === 0,
    line(column: K, missing: string, most: number = LIMITS.name): string {
      if (cells[column] === '') wrong(column, missing);
      return upTo(column, most);
    },
    optional: (column: K, most: number = LIMITS.line) => upTo(column, most),
    entries(column: K): string[] {
      const entries = splitEntries(cells[column]);
      if (entries.length > LIMITS.entries) wrong(column, `Give ${LIMITS.entries} entries or fewer`);
      if (entries.some((entry) => entry.length > LIMITS.entry))
        wrong(column, `Keep each entry to ${LIMITS.entry} characters`);
      return entries;
    },
    whole(column: K, low: number, high: number, whenEmpty?: number): number {
      if (cells[column] === '' && whenEmpty !== undefined) return whenEmpty;
      const value = Number(cells[column]);
      if (!/^\d{1,7}$/.test(cells[column]) || value < low || value > high)
        wrong(column, `Enter a whole number from ${low} to ${high}`);
      return value;
    },
    yesNo(column: K): boolean {
      const text = cells[column].toLowerCase();
      if (text !== 'yes' && text !== 'no') wrong(column, 'Write yes or no');
      return text === 'yes';
    },
    oneOf<T extends string>(column: K, words: readonly T[]): T | null {
      const found = words.find((word) => word.toLowerCase() === cells[column].toLowerCase()) ?? null;
      if (found === null) wrong(column, `Write ${words.slice(0, -1).join(', ')} or ${words.at(-1)}`);
      return found;
    },
  };
}

/** A name as it is stored: the same, or the only one that differs in capitals alone. */
export function storedName(text: string, names: readonly string[]): string | null {
  if (names.includes(text)) return text;
  const alike = names.filter((name) => name.toLowerCase() === text.toLowerCase());
  return alike.length === 1 ? (alike[0] ?? null) : null;
}
