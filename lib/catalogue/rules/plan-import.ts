import { type Cells, COLUMN_KEYS, type ColumnKey, columnsOf, type ListSettings } from './list-columns';
import {
  type FamilyData,
  familyCells,
  type KnownCatalogue,
  type ModelData,
  modelCells,
  type RepairData,
  repairCells,
} from './list-data';
import { type Referred, readFamily, readModel, readRepair, type Tell } from './list-values';
import { foldText } from './search';
import { freeSlug, slugOf } from './slug';

/** A row of the file with its place, counted as a spreadsheet counts: the headings are row 1. */
export type ListRow = { row: number; cells: Cells };

/** What is wrong, where; a null column is a fault of the row as a whole. */
export type ListProblem = { row: number; column: ColumnKey | null; message: string };

export type FieldChange = { column: ColumnKey; before: string; after: string };

/** Something to add (no id) or to change, with the first row that says so. */
export type Change<Data> = {
  row: number;
  id: string | null;
  slug: string;
  data: Data;
  /** What differs from the catalogue; empty for something new. */
  fields: FieldChange[];
};

export type ImportPlan = {
  families: Change<FamilyData>[];
  models: Change<ModelData & { familySlug: string }>[];
  repairs: Change<RepairData & { modelSlug: string }>[];
  /** How many of each the file names and leaves as they are. */
  unchanged: { families: number; models: number; repairs: number };
  problems: ListProblem[];
};

/** What one family, model or repair of the file comes to, from all rows that name it. */
type Entry<Data> = {
  row: number;
  cells: Cells;
  id: string | null;
  slug: string;
  data: Data | null;
};

/**
 * Compares the rows of a list with the catalogue: what would be added, what would change, and everything that is wrong, row by
 * row and column by column. A row finds a family, model or repair by its address; an empty address, or one that is not in use, is
 * a new one. What the file does not name is left alone. Rows of the same model must say the same of it.
 * Nothing may be written while there is a problem; the changes then are those of the rows that could be read.
 * Example: the catalogue's own rows give no change and no problem.
 */
export function planImport(o: {
  rows: readonly ListRow[];
  known: KnownCatalogue;
  referred: Referred;
  settings: ListSettings;
}): ImportPlan {
  const problems: ListProblem[] = [];
  const families = familyEntries(o.rows, o.known, problems);
  const models = modelEntries(o.rows, o.known, families, problems);
  const repairs = repairEntries(o, models, problems);
  const plan: ImportPlan = {
    families: [],
    models: [],
    repairs: [],
    unchanged: { families: 0, models: 0, repairs: 0 },
    problems: problems.sort(byPlace),
  };
  compareFamilies(families, o.known, plan);
  compareModels(models, o.known, plan);
  compareRepairs(repairs, o, plan);
  return plan;
}

const ORDER = new Map(COLUMN_KEYS.map((key, i) => [key, i]));
const placeOf = (column: ColumnKey | null) => (column === null ? -1 : (ORDER.get(column) ?? -1));

function byPlace(a: ListProblem, b: ListProblem): number {
  return a.row - b.row || placeOf(a.column) - placeOf(b.column);
}

const isFilled = (cells: Cells, columns: readonly ColumnKey[]) => columns.some((key) => cells[key] !== '');
const MODEL_COLUMNS = columnsOf('model');
const REPAIR_COLUMNS = columnsOf('repair');
const saysRepair = ({ cells }: ListRow) => isFilled(cells, REPAIR_COLUMNS);
const saysModel = (row: ListRow) => isFilled(row.cells, MODEL_COLUMNS) || saysRepair(row);

type Families = Map<string, Entry<FamilyData>>;
type Models = Map<string, Entry<ModelData> & { family: Entry<FamilyData> }>;

const familyKey = (cells: Cells) => keyOf(cells.familyAddress, cells.family);
const modelKey = (cells: Cells) =>
  cells.modelAddress !== ''
    ? keyOf(cells.modelAddress, '')
    : `${familyKey(cells)}>${keyOf('', modelName(cells))}`;
const modelName = (cells: Cells) => `${cells.maker} ${cells.model}`;

function keyOf(address: string, name: string): string {
  return address === '' ? `name ${foldText(name)}` : `address ${address}`;
}

function familyEntries(rows: readonly ListRow[], known: KnownCatalogue, problems: ListProblem[]): Families {
  const shelf = makeShelf<FamilyData>({
    of: 'family',
    addressColumn: 'familyAddress',
    nameOf: (cells) => cells.family,
    known: known.families.map((family) => ({ ...family, name: family.data.name })),
    read: readFamily,
    problems,
  });
  shelf.reserve(rows);
  const entries: Families = new Map();
  for (const row of rows) shelf.put(entries, familyKey(row.cells), row, columnsOf('family'));
  return entries;
}

function modelEntries(
  rows: readonly ListRow[],
  known: KnownCatalogue,
  families: Families,
  problems: ListProblem[],
): Models {
  const shelf = makeShelf<ModelData>({
    of: 'model',
    addressColumn: 'modelAddress',
    nameOf: modelName,
    known: known.models.map((model) => ({ ...model, name: `${model.data.maker} ${model.data.name}` })),
    read: readModel,
    problems,
  });
  const own = rows.filter(saysModel);
  shelf.reserve(own);
  const entries: Models = new Map();
  for (const row of own) {
    const family = families.get(familyKey(row.cells));
    if (!family) continue;
    const key = modelKey(row.cells);
    const first = entries.get(key);
    if (!first) {
      entries.set(key, { ...shelf.make(row), family });
      continue;
    }
    shelf.compare(first, row, MODEL_COLUMNS);
    if (first.family !== family) tellDifferent(problems, row, 'familyAddress', first.row, 'model');
  }
  return entries;
}

type RepairEntry = Entry<RepairData> & { model: Entry<ModelData> };

function repairEntries(
  o: { rows: readonly ListRow[]; known: KnownCatalogue; referred: Referred; settings: ListSettings },
  models: Models,
  problems: ListProblem[],
): RepairEntry[] {
  const read = (cells: Cells, tell: Tell) => readRepair(cells, o.referred, o.settings, tell);
  const knownOf = new Map<string, { id: string; slug: string; name: string }[]>();
  for (const { id, slug, modelSlug, data } of o.known.repairs) {
    const group = knownOf.get(modelSlug) ?? [];
    knownOf.set(modelSlug, group);
    group.push({ id, slug, name: data.name });
  }
  const rowsOf = new Map<string, ListRow[]>();
  for (const row of o.rows.filter(saysRepair)) {
    const key = modelKey(row.cells);
    const group = rowsOf.get(key) ?? [];
    rowsOf.set(key, group);
    group.push(row);
  }
  return [...rowsOf].flatMap(([key, rows]) => {
    const model = models.get(key);
    if (!model) return [];
    const shelf = makeShelf<RepairData>({
      of: 'repair',
      addressColumn: 'repairAddress',
      nameOf: (cells) => cells.repair,
      known: knownOf.get(model.slug) ?? [],
      read,
      problems,
    });
    shelf.reserve(rows);
    const seen = new Map<string, number>();
    return rows.map((row) => {
      const { repairAddress: address } = row.cells;
      const earlier = seen.get(address);
      if (address !== '' && earlier !== undefined)
        problems.push({
          row: row.row,
          column: 'repairAddress',
          message: `Row ${earlier} is this repair too`,
        });
      else seen.set(address, row.row);
      return { ...shelf.make(row), model };
    });
  });
}

type ShelfFacts<Data> = {
  of: 'family' | 'model' | 'repair';
  addressColumn: ColumnKey;
  nameOf: (cells: Cells) => string;
  known: readonly { id: string; slug: string; name: string }[];
  read: (cells: Cells, tell: Tell) => Data | null;
  problems: ListProblem[];
};

/** Finds or makes what rows name, under addresses of its own. */
function makeShelf<Data>(facts: ShelfFacts<Data>) {
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

function tellDifferent(
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

function compareFamilies(families: Families, known: KnownCatalogue, plan: ImportPlan): void {
  const before = new Map(known.families.map((family) => [family.id, familyCells(family.data)]));
  for (const { data, row, id, slug } of families.values()) {
    if (data === null) continue;
    const fields = fieldChanges(id === null ? undefined : before.get(id), familyCells(data));
    if (id !== null && fields.length === 0) plan.unchanged.families += 1;
    else plan.families.push({ row, id, slug, data, fields });
  }
}

function compareModels(models: Models, known: KnownCatalogue, plan: ImportPlan): void {
  const before = new Map(
    known.models.map((model) => [model.id, { familyAddress: model.familySlug, ...modelCells(model.data) }]),
  );
  for (const { data, row, id, slug, family } of models.values()) {
    if (data === null) continue;
    const after = { familyAddress: family.slug, ...modelCells(data) };
    const fields = fieldChanges(id === null ? undefined : before.get(id), after);
    if (id !== null && fields.length === 0) plan.unchanged.models += 1;
    else plan.models.push({ row, id, slug, data: { ...data, familySlug: family.slug }, fields });
  }
}

function compareRepairs(
  repairs: readonly RepairEntry[],
  o: { known: KnownCatalogue; settings: ListSettings },
  plan: ImportPlan,
): void {
  const before = new Map(o.known.repairs.map((repair) => [repair.id, repairCells(repair.data, o.settings)]));
  for (const { data, row, id, slug, model } of repairs) {
    if (data === null) continue;
    const fields = fieldChanges(id === null ? undefined : before.get(id), repairCells(data, o.settings));
    if (id !== null && fields.length === 0) plan.unchanged.repairs += 1;
    else plan.repairs.push({ row, id, slug, data: { ...data, modelSlug: model.slug }, fields });
  }
}

function fieldChanges(before: Partial<Cells> | undefined, after: Partial<Cells>): FieldChange[] {
  if (before === undefined) return [];
  return COLUMN_KEYS.flatMap((column) => {
    const [was, is] = [before[column] ?? '', after[column] ?? ''];
    return was === is ? [] : [{ column, before: was, after: is }];
  });
}
