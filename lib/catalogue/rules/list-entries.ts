import { type Cells, type ColumnKey, columnsOf, type ListSettings } from './list-columns';
import type { FamilyData, KnownCatalogue, ModelData, RepairData } from './list-data';
import type { ListProblem, ListRow } from './list-rows';
import { type Entry, makeShelf, tellDifferent } from './list-shelf';
import { type Referred, readFamily, readModel, readRepair, type Tell } from './list-values';
import { foldText } from './search';
import { unitName } from './unit-name';

const isFilled = (cells: Cells, columns: readonly ColumnKey[]) => columns.some((key) => cells[key] !== '');
const MODEL_COLUMNS = columnsOf('model');
const REPAIR_COLUMNS = columnsOf('repair');
const saysRepair = ({ cells }: ListRow) => isFilled(cells, REPAIR_COLUMNS);
const saysModel = (row: ListRow) => isFilled(row.cells, MODEL_COLUMNS) || saysRepair(row);

export type Families = Map<string, Entry<FamilyData>>;
export type Models = Map<string, Entry<ModelData> & { family: Entry<FamilyData> }>;

const familyKey = (cells: Cells) => keyOf(cells.familyAddress, cells.family);
const modelKey = (cells: Cells) =>
  cells.modelAddress !== ''
    ? keyOf(cells.modelAddress, '')
    : `${familyKey(cells)}>${keyOf('', modelName(cells))}`;
const modelName = (cells: Cells) => `${cells.maker} ${cells.model}`;

function keyOf(address: string, name: string): string {
  return address === '' ? `name ${foldText(name)}` : `address ${address}`;
}

/** Each family that rows name, once. */
export function familyEntries(
  rows: readonly ListRow[],
  known: KnownCatalogue,
  problems: ListProblem[],
): Families {
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

/** Each model that rows name, once, with its family; a row that names only a family names none. */
export function modelEntries(
  rows: readonly ListRow[],
  known: KnownCatalogue,
  families: Families,
  problems: ListProblem[],
): Models {
  const shelf = makeShelf<ModelData>({
    of: 'model',
    addressColumn: 'modelAddress',
    nameOf: modelName,
    known: known.models.map((model) => ({ ...model, name: unitName(model.data) })),
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

export type RepairEntry = Entry<RepairData> & { model: Entry<ModelData> };

/** One repair a row; rows with the same address tell each other. */
export function repairEntries(
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
