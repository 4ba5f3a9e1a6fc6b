import { CHECK_LAYOUT } from './check-file';
import type { FileKind, FilePlan } from './file-kinds';
import type { Layout } from './file-layout';
import { type ListSettings, listLayout } from './list-columns';
import type { ChecksPlan } from './plan-checks';
import type { ImportPlan } from './plan-import';
import { planLines } from './plan-lines';
import type { PoliciesPlan } from './plan-policies';
import { POLICY_LAYOUT } from './policy-file';

/** What a file would do, in words for the person who looks at it, whichever of the three it is. */
export type FileLook = {
  counts: LookCount[];
  lines: LookLine[];
  /** Every fault, by row and heading; null is the whole row. */
  faults: { row: number; head: string | null; message: string }[];
};

export type LookCount = { what: string; added: number; changed: number; unchanged: number };

/** One thing that an import adds, changes or takes away; what is taken away has no row. */
export type LookLine = {
  row: number | null;
  what: string;
  name: string;
  /** Where it belongs; empty where its name says so. */
  address: string;
  change: 'added' | 'changed' | 'off';
  fields: { head: string; before: string; after: string }[];
};

export function lookOf(run: FilePlan, settings: ListSettings): FileLook {
  switch (run.kind) {
    case 'catalogue':
      return { ...catalogueLook(run.plan, settings), faults: faultsOf(run.plan, listLayout(settings)) };
    case 'checks':
      return { ...checksLook(run.plan), faults: faultsOf(run.plan, CHECK_LAYOUT) };
    case 'policies':
      return { ...policiesLook(run.plan), faults: faultsOf(run.plan, POLICY_LAYOUT) };
  }
}

type Told = Omit<FileLook, 'faults'>;

function catalogueLook(plan: ImportPlan, settings: ListSettings): Told {
  const words = { family: 'Family', model: 'Model', repair: 'Repair' };
  const names = { families: 'Families', models: 'Models', repairs: 'Repairs' };
  const layout = listLayout(settings);
  return {
    counts: (['families', 'models', 'repairs'] as const).map((kind) => {
      const added = plan[kind].filter((change) => change.id === null).length;
      return {
        what: names[kind],
        added,
        changed: plan[kind].length - added,
        unchanged: plan.unchanged[kind],
      };
    }),
    lines: planLines(plan).map(({ row, of, name, address, isNew, fields }) => ({
      row,
      what: words[of],
      name,
      address,
      change: isNew ? 'added' : 'changed',
      fields: withHeads(fields, layout),
    })),
  };
}

function checksLook({ sheets, unchanged }: ChecksPlan): Told {
  return {
    counts: [{ what: 'Check sheets', added: 0, changed: sheets.length, unchanged }],
    lines: sheets.flatMap(({ modelAddress, repairAddress, changes }) =>
      changes.map(({ row, change, label, fields }) => ({
        row,
        what: 'Check',
        name: label,
        address: `${modelAddress}#${repairAddress}`,
        change,
        fields: withHeads(fields, CHECK_LAYOUT),
      })),
    ),
  };
}

function policiesLook({ policies, unchanged }: PoliciesPlan): Told {
  const added = policies.filter(({ id }) => id === null).length;
  return {
    counts: [{ what: 'Policies', added, changed: policies.length - added, unchanged }],
    lines: policies.map(({ row, id, data, fields }) => ({
      row,
      what: 'Policy',
      name: data.name,
      address: '',
      change: id === null ? 'added' : 'changed',
      fields: withHeads(fields, POLICY_LAYOUT),
    })),
  };
}

function headIn(column: string, layout: Layout<string>): string {
  return layout.find(({ key }) => key === column)?.head ?? column;
}

function withHeads(
  fields: readonly { column: string; before: string; after: string }[],
  layout: Layout<string>,
) {
  return fields.map(({ column, before, after }) => ({ head: headIn(column, layout), before, after }));
}

function faultsOf(
  { problems }: { problems: readonly { row: number; column: string | null; message: string }[] },
  layout: Layout<string>,
): FileLook['faults'] {
  return problems.map(({ row, column, message }) => ({
    row,
    head: column === null ? null : headIn(column, layout),
    message,
  }));
}

/** How many things an import adds and changes, for the sentence after it: sheets and policies, not their checks. */
export function changeCounts({ counts }: Pick<FileLook, 'counts'>): { added: number; changed: number } {
  return {
    added: counts.reduce((sum, count) => sum + count.added, 0),
    changed: counts.reduce((sum, count) => sum + count.changed, 0),
  };
}

/** What each file is called in a sentence. */
export const FILE_WORDS: Record<FileKind, string> = {
  catalogue: 'the catalogue',
  checks: 'the check sheets',
  policies: 'the policies',
};
