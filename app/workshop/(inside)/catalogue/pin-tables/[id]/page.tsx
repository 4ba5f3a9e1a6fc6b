import type { Metadata } from 'next';
import { cache } from 'react';
import { nothingHere } from '@/app/nothing-here';
import { ConnectorDrawing } from '@/app/ui/connector/connector-drawing';
import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { PageHead } from '@/app/ui/page/page-head';
import { Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import { readOwnTable, readTable } from '@/lib/bench/pin-table-records';
import { may } from '@/lib/people/rules/roles';
import { requireStaff } from '../../../../who';
import { SavedNote } from '../../saved-note';
import { retireAction } from '../actions';
import { PinTableForm } from '../pin-table-form';
import { TableFacts } from '../table-facts';

const readOnce = cache((id: string) => readTable(id));

type Props = { params: Promise<{ id: string }>; searchParams: Promise<{ saved?: string }> };

export async function generateMetadata({ params }: Pick<Props, 'params'>): Promise<Metadata> {
  await requireStaff();
  const found = await readOnce((await params).id);
  return { title: found ? `Pin table ${found.name}` : 'Not found' };
}

export default async function PinTablePage({ params, searchParams }: Props) {
  const staff = await requireStaff();
  const { id } = await params;
  const { saved } = await searchParams;
  const [table, own] = await Promise.all([readOnce(id), readOwnTable(id)]);
  if (!table) nothingHere();
  const mayChange = own !== null && own.retiredAt === null && may(staff.role, 'catalogue');
  return (
    <>
      <PageHead
        above={
          <>
            <TextLink href="/workshop/catalogue">Catalogue</TextLink> /{' '}
            <TextLink href="/workshop/catalogue/pin-tables">Pin tables</TextLink>
          </>
        }
        title={table.name}
        lead={own?.retiredAt ? 'Retired: no new check can name it.' : undefined}
      />
      <SavedNote saved={saved} />
      {table.note === '' ? null : <p className="max-w-text">{table.note}</p>}
      <ConnectorDrawing table={table} reads={{}} />
      <TableFacts table={table} />
      <div className="mt-8">
        <Table
          caption="Pins"
          keep
          rows={table.pins}
          rowKey={(pin) => pin.pin}
          columns={[
            { head: 'Pin', kind: 'rowhead', cell: (pin) => pin.pin },
            { head: 'Name', cell: (pin) => (pin.isUnused ? `${pin.name}, unused` : pin.name) },
            { head: 'Net', cell: (pin) => pin.net },
            { head: 'Row, position', cell: (pin) => `${pin.row}, ${pin.position}` },
          ]}
        />
      </div>
      {mayChange ? (
        <div className="mt-12 grid gap-12">
          <section aria-labelledby="replace">
            <h2 id="replace" className="mb-3">
              Put another in its place
            </h2>
            <p className="mb-3 max-w-text">{usedText(own.checks)}</p>
            <PinTableForm label="Put another in its place" replaces={id} known={own} />
          </section>
          <section aria-labelledby="retire">
            <h2 id="retire" className="mb-3">
              No longer used
            </h2>
            <ActionForm action={retireAction.bind(null, id)} label="Retire this pin table">
              <ConfirmButton
                label="Retire this pin table"
                question={`Offer “${table.name}” no longer?`}
                confirm="Yes, retire it"
                consequence="Sheets that name it keep it."
              />
            </ActionForm>
          </section>
        </div>
      ) : null}
    </>
  );
}

function usedText(checks: number): string {
  if (checks === 0) return 'No check names it yet.';
  return checks === 1
    ? 'One check names it, and will keep it as it is.'
    : `${checks} checks name it, and will keep it as it is.`;
}
