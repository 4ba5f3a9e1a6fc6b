import type { Metadata } from 'next';
import { LinkButton } from '@/app/ui/page/button';
import { PageHead } from '@/app/ui/page/page-head';
import { Table } from '@/app/ui/page/table';
import { Tag } from '@/app/ui/page/tag';
import { TextLink } from '@/app/ui/page/text-link';
import { listOwnTables } from '@/lib/bench/pin-table-records';
import { connectorSheet } from '@/lib/bench/rules/connector-sheet';
import type { PinTable } from '@/lib/bench/rules/pin-table';
import { PIN_TABLES } from '@/lib/bench/rules/pin-tables/all';
import { ownPinTable } from '@/lib/bench/rules/read-pin-table';
import { may } from '@/lib/people/rules/roles';
import { requireStaff } from '../../../who';
import { SavedNote } from '../saved-note';

export const metadata: Metadata = { title: 'Pin tables' };

type Props = { searchParams: Promise<{ saved?: string }> };
type Row = {
  key: string;
  name: string;
  source: string;
  table: PinTable | null;
  state: 'ships' | 'used' | 'retired';
};

export default async function PinTablesPage({ searchParams }: Props) {
  const staff = await requireStaff();
  const { saved } = await searchParams;
  const own = (await listOwnTables()).map(
    (row): Row => ({
      key: row.id,
      name: row.name,
      source: row.source,
      table: ownPinTable(row),
      state: row.retiredAt === null ? 'used' : 'retired',
    }),
  );
  const shipped = PIN_TABLES.map(
    (table): Row => ({ key: table.key, name: table.name, source: table.note, table, state: 'ships' }),
  );
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/catalogue">Catalogue</TextLink>}
        title="Pin tables"
        lead="What a connector sheet is drawn from: every pin, its net and its place."
      >
        {may(staff.role, 'catalogue') ? (
          <LinkButton href="/workshop/catalogue/pin-tables/new">Add a pin table</LinkButton>
        ) : null}
      </PageHead>
      <SavedNote saved={saved} />
      <Table
        caption="Pin tables"
        captionHidden
        rows={[...own, ...shipped]}
        rowKey={(row) => row.key}
        columns={[
          {
            head: 'Connector',
            kind: 'rowhead',
            cell: (row) => <TextLink href={`/workshop/catalogue/pin-tables/${row.key}`}>{row.name}</TextLink>,
          },
          { head: 'Pins', kind: 'number', cell: (row) => row.table?.pins.length ?? 0 },
          {
            head: 'Pairs that must be open',
            kind: 'number',
            cell: (row) => (row.table ? connectorSheet(row.table).mustBeOpen.length : 0),
          },
          { head: 'Note', cell: (row) => row.source },
          { head: 'State', cell: (row) => STATES[row.state] },
        ]}
      />
    </>
  );
}

const STATES = {
  ships: 'ships with the program',
  used: <Tag tone="good">our own</Tag>,
  retired: <Tag tone="waiting">retired</Tag>,
};
