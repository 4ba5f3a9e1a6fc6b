import { Table } from '@/app/ui/page/table';
import { formatMoney } from '@/lib/money/amount';
import { revisionChanges } from '@/lib/quotes/rules/lines';
import { readLine } from '@/lib/quotes/stored-lines';
import type { PartProps, Revision } from './part-props';

/** What a later revision changed, line by line, against the price that was sent before it. */
export function ChangesPart({ quote, workshop, revision }: PartProps & { revision: Revision }) {
  const before = quote.revisions.findLast((each) => each.revision < revision.revision);
  if (!before) return null;
  const money = (minor: number | null) =>
    minor === null ? '–' : formatMoney(minor, quote.currency, workshop.locale);
  // Lines kept with tax and lines kept without it cannot be held against each other; the totals can.
  const changes =
    before.isGross === revision.isGross
      ? revisionChanges(before.lines.map(readLine), revision.lines.map(readLine))
      : [];
  // The same price once more, as after a no that became a yes.
  if (changes.length === 0 && before.grossMinor === revision.grossMinor) return null;
  return (
    <Table
      caption={`What changed since revision ${before.revision}`}
      columns={[
        { head: 'What', kind: 'rowhead', cell: (row) => row.description },
        { head: 'Before', kind: 'number', cell: (row) => money(row.was) },
        { head: 'Now', kind: 'number', cell: (row) => money(row.now) },
      ]}
      rows={changes.map((row, place) => ({ ...row, place }))}
      rowKey={(row) => String(row.place)}
      foot={
        <tr>
          <th scope="row">Total with tax</th>
          <td data-kind="number">{money(before.grossMinor)}</td>
          <td data-kind="number">{money(revision.grossMinor)}</td>
        </tr>
      }
      keep
    />
  );
}
