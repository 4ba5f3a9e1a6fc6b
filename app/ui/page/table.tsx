import type { ReactNode } from 'react';

export type Column<Row> = {
  /** each of a table's its own */
  head: string;
  cell: (row: Row) => ReactNode;
  kind?: 'text' | 'short' | 'number' | 'rowhead' | 'action' | undefined;
};

type TableProps<Row> = {
  caption: ReactNode;
  columns: readonly Column<Row>[];
  rows: readonly Row[];
  rowKey: (row: Row) => string;
  empty?: ReactNode;
  foot?: ReactNode;
  captionHidden?: boolean | undefined;
  keep?: boolean | undefined;
};

// Roles are spelt out because a row that is laid out as a block loses them in some browsers.
const ROLE = {
  table: 'table',
  rowgroup: 'rowgroup',
  row: 'row',
  columnheader: 'columnheader',
  rowheader: 'rowheader',
  cell: 'cell',
} as const;

/**
 * A ruled table; on a narrow screen each row becomes a small list with its headings. Kind 'action' is a column of
 * links or buttons whose heading is only heard, 'short' one of days or codes that are not broken where there is room. `foot` is a row of <td>;
 * `keep` holds a table of few short columns together on a narrow screen too.
 *
 * ```tsx
 * <Table caption="Prices with tax" rows={repairs} rowKey={(r) => r.id} columns={[
 *   { head: 'Repair', kind: 'rowhead', cell: (r) => r.name },
 *   { head: 'Price', kind: 'number', cell: (r) => <Money minor={r.price} currency="GBP" locale="en-GB" /> },
 * ]} empty="Nothing on the list yet." />
 * ```
 */
export function Table<Row>(props: TableProps<Row>) {
  const { caption, columns, rows, rowKey, empty, foot, captionHidden, keep } = props;
  if (rows.length === 0 && empty !== undefined) {
    return <p className="empty">{empty}</p>;
  }
  return (
    <table className={keep ? 'table' : 'table table-stack'} role={ROLE.table}>
      <caption className={captionHidden ? 'sr-only' : undefined}>{caption}</caption>
      <thead role={ROLE.rowgroup}>
        <tr role={ROLE.row}>
          {columns.map((column) => (
            <th key={column.head} scope="col" role={ROLE.columnheader} data-kind={column.kind}>
              {column.kind === 'action' ? <span className="sr-only">{column.head}</span> : column.head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody role={ROLE.rowgroup}>
        {rows.map((row) => (
          <tr key={rowKey(row)} role={ROLE.row}>
            {columns.map((column) =>
              column.kind === 'rowhead' ? (
                <th key={column.head} scope="row" role={ROLE.rowheader}>
                  {column.cell(row)}
                </th>
              ) : (
                <td key={column.head} role={ROLE.cell} data-head={column.head} data-kind={column.kind}>
                  <span>{column.cell(row)}</span>
                </td>
              ),
            )}
          </tr>
        ))}
      </tbody>
      {foot ? <tfoot role={ROLE.rowgroup}>{foot}</tfoot> : null}
    </table>
  );
}
