import { Facts } from '@/app/ui/docket/facts';
import { Table } from '@/app/ui/page/table';
import { shownLines } from '@/lib/quotes/rules/lines';
import { readLine } from '@/lib/quotes/stored-lines';

type Revision = {
  isGross: boolean;
  netMinor: number;
  taxMinor: number;
  grossMinor: number;
  lines: readonly Parameters<typeof readLine>[0][];
};

/** One revision of a price on the workshop's side: its lines and its sums. */
export function RevisionLines({ revision, money }: { revision: Revision; money: (minor: number) => string }) {
  return (
    <>
      <Table
        caption={revision.isGross ? 'Lines, with tax' : 'Lines, before tax'}
        columns={[
          { key: 'what', head: 'What', kind: 'rowhead', cell: (line) => line.description },
          { key: 'amount', head: 'Amount', kind: 'number', cell: (line) => money(line.amount) },
        ]}
        rows={shownLines(revision.lines.map(readLine)).map((line, place) => ({ ...line, place }))}
        rowKey={(line) => String(line.place)}
        keep
      />
      <Facts
        items={[
          { term: 'Before tax', text: money(revision.netMinor) },
          { term: 'Tax', text: money(revision.taxMinor) },
          { term: 'Together', text: money(revision.grossMinor) },
        ]}
      />
    </>
  );
}
