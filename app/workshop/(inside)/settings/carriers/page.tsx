import type { Metadata } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { LinkButton } from '@/app/ui/page/button';
import { PageHead } from '@/app/ui/page/page-head';
import { Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import { formatMoney } from '@/lib/money/amount';
import { readCarrierRows } from '@/lib/parcels/records';
import { centimetreText, kilogramText } from '@/lib/parcels/rules/measures';
import { requireStaff } from '../../../who';
import { SavedNote } from '../../catalogue/saved-note';
import { keepCustomsFree } from './actions';

export const metadata: Metadata = { title: 'Carriers' };

export default async function CarriersPage({ searchParams }: { searchParams: Promise<{ saved?: string }> }) {
  await requireStaff('settings');
  const { saved } = await searchParams;
  const [carriers, workshop] = await Promise.all([readCarrierRows(), readWorkshop()]);
  const { currency, locale } = workshop;
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/settings">Settings</TextLink>}
        title="Carriers"
        lead="Who takes parcels back to customers, and what each of them takes. Their own terms come first."
      />
      <SavedNote saved={saved} />
      <Table
        caption="Carriers of the workshop"
        captionHidden
        rows={carriers}
        rowKey={(row) => row.id}
        empty="None yet. Any name can be typed when a unit is sent back, but nothing is compared then."
        columns={[
          {
            head: 'Name',
            kind: 'rowhead',
            cell: (row) => <TextLink href={`/workshop/settings/carriers/${row.id}`}>{row.name}</TextLink>,
          },
          { head: 'Travels', cell: (row) => (row.kind === 'road' ? 'by road only' : 'also by air') },
          { head: 'Heaviest', kind: 'number', cell: (row) => kilogramText(row.maxWeight) },
          { head: 'Longest side', kind: 'number', cell: (row) => `${centimetreText(row.longestSide)} cm` },
          {
            head: 'Makes good up to',
            kind: 'number',
            cell: (row) => formatMoney(row.maxValueMinor, currency, locale),
          },
          {
            head: 'By volume',
            cell: ({ volume }) =>
              `cm³ / ${volume.divisor}, steps of ${volume.step} g${volume.wholeSides ? ', whole cm' : ''}`,
          },
          {
            head: 'Longest on its way',
            cell: ({ transit }) => `${transit.home}, abroad ${transit.abroad} working days`,
          },
          { head: 'Page on a parcel', cell: (row) => (row.tracking === null ? 'none' : 'linked') },
          { head: 'In use', cell: (row) => (row.isUsed ? 'yes' : 'no') },
        ]}
      />
      <p className="mt-6">
        <LinkButton href="/workshop/settings/carriers/new">Add a carrier</LinkButton>
      </p>
      <section aria-labelledby="customs">
        <h2 id="customs">Parcels abroad</h2>
        <p>
          A parcel to another country gets a customs note. Between two countries of the European Union it gets
          none, and neither to the countries named here.
        </p>
        <ActionForm
          action={keepCustomsFree}
          hidden={{ seenAt: workshop.updatedAt.toISOString() }}
          label="Parcels abroad"
        >
          <TextField
            name="customsFree"
            label="Further countries without a customs note"
            hint="Codes with two letters, like JE, GG."
            optional
            maxLength={1000}
            autoComplete="off"
            defaultValue={workshop.customsFree.join(', ')}
          />
          <SubmitButton
            label="Save the countries"
            busy="Saving…"
            kind="second"
            consequence="The dispatch list names the parcels that need a note."
          />
        </ActionForm>
      </section>
    </>
  );
}
