import type { Cells, ColumnKey } from './list-columns';
import type { ListProblem, ListRow } from './list-rows';
import type { Tell } from './list-values';
import { foldText } from './search';
import { freeSlug, slugOf } from './slug';

/** What one family, model or repair of the file comes to, from all rows that name it. */
export type Entry<Data> = {
  row: number;
  cells: Cells;
  id: string | null;
  slug: string;
  data: Data | null;
};

type ShelfFacts<Data> = {
  of: 'family' | 'model' | 'repair';
  addressColumn: ColumnKey;
  nameOf: (cells: Cells) => string;
  known: readonly { id: string; slug: string; name: string }[];
  read: (cells: Cells, tell: Tell) => Data | null;
  problems: ListProblem[];
};

/** Finds or makes what rows name, under addresses of its own. */
export function makeShelf<Data>(facts: ShelfFacts<Data>) {
  const bySlug = new Map(facts.known.map((each) => [each.slug, each]));
  const byName = new Map(facts.known.map((each) => [foldText(each.name), each]));
  const taken = new Set(bySlug.keys());
  const made = new Map<string, ListRow>();
  const addressOf = (row: ListRow) => row.cells[facts.addressColumn];
  const tellAt = (row: ListRow, column: ColumnKey, message: string) =>
    facts.problems.push({ row: row.row, column, message });

  function make(row: ListRow): Entry<Data> {
    const tell: Tell = (column, message) => void tellAt(row, column, message);
    const address = addressOf(row);
    const name = facts.nameOf(row.cells);
    const alike = byName.get(foldText(name));
    if (address !== '' && foldText(address).replaceAll(' ', '-') !== address)
      tell(facts.addressColumn, 'An address is small letters and digits with single hyphens between');
    if (address.length > LONGEST_ADDRESS)
      tell(facts.addressColumn, `Use ${LONGEST_ADDRESS} characters or fewer`);
    if (address === '' && alike)
      tell(
        facts.addressColumn,
        `There is a ${facts.of} of this name. To change it, write its address, ${alike.slug}; for another one, write a new address`,
      );
    const earlier = made.get(foldText(name));
    if (earlier === undefined) made.set(foldText(name), row);
    else if (address === '' || addressOf(earlier) === '')
      tell(
        facts.addressColumn,
        `Row ${earlier.row} has a ${facts.of} of this name. If it is the same, write the same in both; if not, give each an address`,
      );
    const slug = address === '' ? freeSlug(slugOf(name), taken) : address;
    taken.add(slug);
    const data = facts.read(row.cells, tell);
    return { row: row.row, cells: row.cells, id: bySlug.get(slug)?.id ?? null, slug, data };
  }

  // A later row repeats what the first one said; its own cells are read too, so that every fault is told where it stands.
  function compare(first: Entry<Data>, row: ListRow, columns: readonly ColumnKey[]): void {
    const told = new Set<ColumnKey>();
    facts.read(row.cells, (column, message) => {
      told.add(column);
      tellAt(row, column, message);
    });
    for (const column of columns) {
      if (first.cells[column] !== row.cells[column] && !told.has(column))
        tellDifferent(facts.problems, row, column, first.row, facts.of);
    }
  }

  return {
    make,
    compare,
    /** Keeps the addresses that rows bring along, so that none of them is given to a row without one. */
    reserve(rows: readonly ListRow[]): void {
      for (const row of rows) if (addressOf(row) !== '') taken.add(addressOf(row));
    },
    put(entries: Map<string, Entry<Data>>, key: string, row: ListRow, columns: readonly ColumnKey[]): void {
      const first = entries.get(key);
      if (first) compare(first, row, columns);
      else entries.set(key, make(row));
    },
  };
}

const LONGEST_ADDRESS = 80;

/** A later row that says something else of what an earlier one named. */
export function tellDifferent(
  problems: ListProblem[],
  row: ListRow,
  column: ColumnKey,
  firstRow: number,
  of: string,
): void {
  problems.push({
    row: row.row,
    column,
    message: `Row ${firstRow} says something else of the same ${of}`,
  });
}
