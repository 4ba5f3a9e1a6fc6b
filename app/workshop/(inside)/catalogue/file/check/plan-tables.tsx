import { Table } from '@/app/ui/page/table';
import { headOf, type ListSettings } from '@/lib/catalogue/rules/list-columns';
import type { ListProblem } from '@/lib/catalogue/rules/list-rows';
import type { ImportPlan } from '@/lib/catalogue/rules/plan-import';
import type { PlanLine } from '@/lib/catalogue/rules/plan-lines';

// Faults are all shown, since each must be put right; of what goes well a person reads the beginning.
const MOST_LINES = 200;

const WORDS: Record<PlanLine['of'], string> = { family: 'Family', model: 'Model', repair: 'Repair' };

/** Every fault of the file by row and column; nothing where there is none. */
export function FaultTable(props: { problems: readonly ListProblem[]; settings: ListSettings }) {
  if (props.problems.length === 0) return null;
  return (
    <section aria-labelledby="faults" className="mt-8">
      <h2 id="faults" className="mb-2">
        Faults
      </h2>
      <Table
        caption="Faults by row and column"
        captionHidden
        rows={props.problems.map((problem, i) => ({ ...problem, key: String(i) }))}
        rowKey={(problem) => problem.key}
        columns={[
          { key: 'row', head: 'Row', kind: 'rowhead', cell: (problem) => `Row ${problem.row}` },
          {
            key: 'column',
            head: 'Column',
            cell: ({ column }) => (column === null ? 'the whole row' : headOf(column, props.settings)),
          },
          { key: 'what', head: 'What is wrong', cell: (problem) => problem.message },
        ]}
      />
    </section>
  );
}

/** How many of each kind would be added, changed, or stay as they are. */
export function CountTable({ plan }: { plan: ImportPlan }) {
  const rows = (['families', 'models', 'repairs'] as const).map((kind) => {
    const added = plan[kind].filter((change) => change.id === null).length;
    return { kind, added, changed: plan[kind].length - added, unchanged: plan.unchanged[kind] };
  });
  const names = { families: 'Families', models: 'Models', repairs: 'Repairs' };
  return (
    <section aria-labelledby="counts" className="mt-8 max-w-text">
      <h2 id="counts" className="mb-2">
        {plan.problems.length > 0 ? 'Of the rows that could be read' : 'In numbers'}
      </h2>
      <Table
        caption="How many would be added and changed"
        captionHidden
        keep
        rows={rows}
        rowKey={(row) => row.kind}
        columns={[
          { key: 'kind', head: 'What', kind: 'rowhead', cell: (row) => names[row.kind] },
          { key: 'added', head: 'Added', kind: 'number', cell: (row) => row.added },
          { key: 'changed', head: 'Changed', kind: 'number', cell: (row) => row.changed },
          { key: 'same', head: 'Unchanged', kind: 'number', cell: (row) => row.unchanged },
        ]}
      />
    </section>
  );
}

/** What would change, cell by cell. */
export function ChangedTable({ lines, settings }: { lines: readonly PlanLine[]; settings: ListSettings }) {
  if (lines.length === 0) return null;
  const rows = lines.flatMap((line) =>
    line.fields.map((field) => ({ ...line, ...field, key: `${line.of}${line.address}${field.column}` })),
  );
  return (
    <section aria-labelledby="changed" className="mt-8">
      <h2 id="changed" className="mb-2">
        Changed
      </h2>
      <Table
        caption="What would change"
        captionHidden
        rows={rows.slice(0, MOST_LINES)}
        rowKey={(row) => row.key}
        columns={[
          { key: 'name', head: 'What', kind: 'rowhead', cell: nameOf },
          { key: 'row', head: 'Row', cell: (row) => row.row },
          { key: 'column', head: 'Column', cell: (row) => headOf(row.column, settings) },
          { key: 'before', head: 'Now', cell: (row) => row.before || 'empty' },
          { key: 'after', head: 'Then', cell: (row) => row.after || 'empty' },
        ]}
      />
      <More all={rows.length} what="changes" />
    </section>
  );
}

/** What would be added. */
export function AddedTable({ lines }: { lines: readonly PlanLine[] }) {
  if (lines.length === 0) return null;
  return (
    <section aria-labelledby="added" className="mt-8">
      <h2 id="added" className="mb-2">
        Added
      </h2>
      <Table
        caption="What would be added"
        captionHidden
        rows={lines.slice(0, MOST_LINES)}
        rowKey={(line) => `${line.of}${line.address}`}
        columns={[
          { key: 'name', head: 'What', kind: 'rowhead', cell: nameOf },
          { key: 'row', head: 'Row', cell: (line) => line.row },
        ]}
      />
      <More all={lines.length} what="lines" />
    </section>
  );
}

function nameOf({ of, name, address }: PlanLine) {
  return (
    <>
      <span className="font-normal text-soft">{WORDS[of]}</span> {name}
      <span className="block break-all font-normal text-small text-soft">{address}</span>
    </>
  );
}

function More({ all, what }: { all: number; what: string }) {
  if (all <= MOST_LINES) return null;
  const more = (all - MOST_LINES).toLocaleString('en-GB');
  return (
    <p className="mt-3">{`These are the first ${MOST_LINES}; ${more} more ${what} like them follow.`}</p>
  );
}
