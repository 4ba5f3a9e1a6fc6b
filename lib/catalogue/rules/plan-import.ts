import { type CellChange, cellChanges } from './file-layout';
import { type Cells, COLUMN_KEYS, type ColumnKey, type ListSettings } from './list-columns';
import {
  type FamilyData,
  familyCells,
  type KnownCatalogue,
  type ModelData,
  modelCells,
  type RepairData,
  repairCells,
} from './list-data';
import { familyEntries, modelEntries, repairEntries } from './list-entries';
import { byPlace, type ListProblem, type ListRow } from './list-rows';
import type { Entry } from './list-shelf';
import type { Referred } from './list-values';

export type FieldChange = CellChange<ColumnKey>;

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
  const all = {
    families: compare([...families.values()], {
      before: o.known.families,
      cellsOf: familyCells,
    }),
    models: compare(
      [...models.values()].map((each) => onto(each, { familySlug: each.family.slug })),
      {
        before: o.known.models.map((each) => onto(each, { familySlug: each.familySlug })),
        cellsOf: cellsOfModel,
      },
    ),
    repairs: compare(
      repairs.map((each) => onto(each, { modelSlug: each.model.slug })),
      {
        before: o.known.repairs.map((each) => onto(each, { modelSlug: each.modelSlug })),
        cellsOf: (data) => repairCells(data, o.settings),
      },
    ),
  };
  return {
    families: all.families.changes,
    models: all.models.changes,
    repairs: all.repairs.changes,
    unchanged: {
      families: all.families.unchanged,
      models: all.models.unchanged,
      repairs: all.repairs.unchanged,
    },
    problems: problems.sort(byPlace),
  };
}

/** What an entry says, with what it belongs to beside it. */
function onto<Data extends object, E extends { data: Data | null }, More extends object>(
  entry: E,
  more: More,
) {
  return { ...entry, data: entry.data && { ...entry.data, ...more } };
}

function cellsOfModel({ familySlug, ...data }: ModelData & { familySlug: string }): Partial<Cells> {
  return { familyAddress: familySlug, ...modelCells(data) };
}

/** What the entries of one kind change in what there was before, and how many change nothing; what could not be read is left out. */
function compare<Data>(
  entries: readonly Entry<Data>[],
  o: { before: readonly { id: string; data: Data }[]; cellsOf: (data: Data) => Partial<Cells> },
): { changes: Change<Data>[]; unchanged: number } {
  const before = new Map(o.before.map(({ id, data }) => [id, o.cellsOf(data)]));
  const compared = entries.flatMap(({ row, id, slug, data }) =>
    data === null
      ? []
      : [
          {
            row,
            id,
            slug,
            data,
            fields: fieldsOf(id === null ? undefined : before.get(id), o.cellsOf(data)),
          },
        ],
  );
  const changes = compared.filter(({ id, fields }) => id === null || fields.length > 0);
  return { changes, unchanged: compared.length - changes.length };
}

function fieldsOf(before: Partial<Cells> | undefined, after: Partial<Cells>): FieldChange[] {
  return before === undefined ? [] : cellChanges(COLUMN_KEYS, before, after);
}
