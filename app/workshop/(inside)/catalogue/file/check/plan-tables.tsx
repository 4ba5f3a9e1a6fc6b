import { Table } from '@/app/ui/page/table';
import type { FileLook, LookLine } from '@/lib/catalogue/rules/file-look';

// Faults are all shown, since each must be put right; of what goes well a person reads the beginning.
const MOST_LINES = 200;

/** Every fault of the file by row and column; nothing where there is none. */
export function FaultTable({ faults }: Pick<FileLook, 'faults'>) {
  if (faults.length === 0) return null;
  return (
    <section aria-labelledby="faults" className="mt-8">
      <h2 id="faults" className="mb-2">
        Faults
      </h2>
      <Table
        caption="Faults by row and column"
        captionHidden
        rows={faults.map((fault, i) => ({ ...fault, key: String(i) }))}
        rowKey={(fault) => fault.key}
        columns={[
          { head: 'Row', kind: 'rowhead', cell: (fault) => `Row ${fault.row}` },
          { head: 'Column', cell: (fault) => fault.head ?? 'the whole row' },
          { head: 'What is wrong', cell: (fault) => fault.message },
        ]}
      />
    </section>
  );
}

/** How many of each kind would be added, changed, or stay as they are. */
export function CountTable({ counts, faults }: Pick<FileLook, 'counts' | 'faults'>) {
  return (
    <section aria-labelledby="counts" className="mt-8 max-w-text">
      <h2 id="counts" className="mb-2">
        {faults.length > 0 ? 'Of the rows that could be read' : 'In numbers'}
      </h2>
      <Table
        caption="How many would be added and changed"
        captionHidden
        keep
        rows={counts}
        rowKey={(count) => count.what}
        columns={[
          { head: 'What', kind: 'rowhead', cell: (count) => count.what },
          { head: 'Added', kind: 'number', cell: (count) => count.added },
          { head: 'Changed', kind: 'number', cell: (count) => count.changed },
          { head: 'Unchanged', kind: 'number', cell: (count) => count.unchanged },
        ]}
      />
    </section>
  );
}

/** What would change, cell by cell. */
export function ChangedTable({ lines }: { lines: readonly LookLine[] }) {
  const rows = lines
    .filter(({ change }) => change === 'changed')
    .flatMap((line) => line.fields.map((field) => ({ ...line, ...field })));
  if (rows.length === 0) return null;
  return (
    <section aria-labelledby="changed" className="mt-8">
      <h2 id="changed" className="mb-2">
        Changed
      </h2>
      <Table
        caption="What would change"
        captionHidden
        rows={rows.slice(0, MOST_LINES)}
        rowKey={(row) => `${row.what}${row.address}${row.row}${row.head}`}
        columns={[
          { head: 'What', kind: 'rowhead', cell: nameOf },
          { head: 'Row', cell: (row) => row.row },
          { head: 'Column', cell: (row) => row.head },
          { head: 'Now', cell: (row) => row.before || 'empty' },
          { head: 'Then', cell: (row) => row.after || 'empty' },
        ]}
      />
      <More all={rows.length} what="changes" />
    </section>
  );
}

/** What would be added. */
export function AddedTable({ lines }: { lines: readonly LookLine[] }) {
  const added = lines.filter(({ change }) => change === 'added');
  if (added.length === 0) return null;
  return (
    <section aria-labelledby="added" className="mt-8">
      <h2 id="added" className="mb-2">
        Added
      </h2>
      <Table
        caption="What would be added"
        captionHidden
        rows={added.slice(0, MOST_LINES)}
        rowKey={(line) => `${line.what}${line.address}${line.row}`}
        columns={[
          { head: 'What', kind: 'rowhead', cell: nameOf },
          { head: 'Row', cell: (line) => line.row },
        ]}
      />
      <More all={added.length} what="lines" />
    </section>
  );
}

/** Checks that would be taken off their sheet, all of them: the file says so by leaving them out. */
export function OffTable({ lines }: { lines: readonly LookLine[] }) {
  const off = lines.flatMap((line, i) => (line.change === 'off' ? [{ ...line, key: String(i) }] : []));
  if (off.length === 0) return null;
  return (
    <section aria-labelledby="off" className="mt-8 max-w-text">
      <h2 id="off" className="mb-2">
        Taken off
      </h2>
      <Table
        caption="What would be taken off its sheet"
        captionHidden
        rows={off}
        rowKey={(line) => line.key}
        columns={[{ head: 'What', kind: 'rowhead', cell: nameOf }]}
      />
    </section>
  );
}

function nameOf({ what, name, address }: LookLine) {
  return (
    <>
      <span className="font-normal text-soft">{what}</span> {name}
      {address ? <span className="block break-all font-normal text-small text-soft">{address}</span> : null}
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
