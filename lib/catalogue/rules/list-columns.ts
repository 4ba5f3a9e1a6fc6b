import type { Layout } from './file-layout';

/*
 * The catalogue as one table, for a spreadsheet. Words of these files (list-*, plan-import):
 * list: the file, one row for each repair with its model and family; a model without repairs and a family without models
 * have a row of their own. column: a key of COLUMNS. cell: text as a person reads it. address: the last part of the page's
 * address, by which a row finds what is in the catalogue already.
 */

/** What a column belongs to, and how its cells are written: a list is separated by semicolons. */
export type Part = 'family' | 'model' | 'repair';
type ColumnFacts = { head: string; of: Part; kind: 'text' | 'list' };

const text = (of: Part, head: string): ColumnFacts => ({ head, of, kind: 'text' });
const list = (of: Part, head: string): ColumnFacts => ({ head, of, kind: 'list' });

const COLUMNS = {
  familyAddress: text('family', 'Family address'),
  family: text('family', 'Family'),
  familyPlace: text('family', 'Family place'),
  modelAddress: text('model', 'Model address'),
  maker: text('model', 'Maker'),
  model: text('model', 'Model'),
  aliases: list('model', 'Other names'),
  accessories: list('model', 'Comes with'),
  weight: text('model', 'Weight g'),
  length: text('model', 'Length mm'),
  width: text('model', 'Width mm'),
  height: text('model', 'Height mm'),
  tariffNumber: text('model', 'Tariff number'),
  serialPlace: text('model', 'Serial place'),
  serialExample: text('model', 'Serial example'),
  serialPattern: text('model', 'Serial pattern'),
  serialRule: text('model', 'Serial check'),
  battery: text('model', 'Battery'),
  batteryWh: text('model', 'Battery Wh'),
  mains: text('model', 'Mains inside'),
  modelListed: text('model', 'Model listed'),
  repairAddress: text('repair', 'Repair address'),
  repair: text('repair', 'Repair'),
  summary: text('repair', 'In a sentence'),
  price: text('repair', 'Price'),
  currency: text('repair', 'Currency'),
  tax: text('repair', 'Tax'),
  taxRate: text('repair', 'Tax rate %'),
  minutes: text('repair', 'Bench minutes'),
  workingDays: text('repair', 'Working days'),
  symptoms: list('repair', 'Symptoms'),
  policy: text('repair', 'Policy'),
  parts: list('repair', 'Parts'),
  repairListed: text('repair', 'Repair listed'),
} as const satisfies Record<string, ColumnFacts>;

export type ColumnKey = keyof typeof COLUMNS;
export type Cells = Record<ColumnKey, string>;

/** What the list must know of the workshop: its prices are in one currency, and either all with tax or all without. */
export type ListSettings = { currency: string; pricesIncludeTax: boolean };

/** Every column, in the order of the file. */
export const COLUMN_KEYS = Object.keys(COLUMNS).filter((key): key is ColumnKey =>
  Object.hasOwn(COLUMNS, key),
);

/** Columns of a family, a model or a repair, in the order of the file. */
export function columnsOf(part: Part): ColumnKey[] {
  return COLUMN_KEYS.filter((key) => COLUMNS[key].of === part);
}

/** The heading of a column; that of the price says whether tax is in it, so that a list of the other kind is not taken for it. */
export function headOf(key: ColumnKey, settings: ListSettings): string {
  if (key === 'price') return settings.pricesIncludeTax ? 'Price with tax' : 'Price without tax';
  return COLUMNS[key].head;
}

/** The list as a file has it. */
export function listLayout(settings: ListSettings): Layout<ColumnKey> {
  return COLUMN_KEYS.map((key) => ({ key, head: headOf(key, settings), kind: COLUMNS[key].kind }));
}

/** A row without anything in it. */
export function emptyCells(): Cells {
  return Object.fromEntries(COLUMN_KEYS.map((key) => [key, ''])) as Cells;
}
