import type { Metadata } from 'next';
import { cache } from 'react';
import { nothingHere } from '@/app/nothing-here';
import { readWorkshop } from '@/app/read-workshop';
import { ActionForm } from '@/app/ui/forms/action-form';
import { CountField } from '@/app/ui/forms/count-field';
import { MoneyField } from '@/app/ui/forms/money-field';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { PageHead } from '@/app/ui/page/page-head';
import { Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import { DayText } from '@/app/ui/words/day-text';
import { Money } from '@/app/ui/words/money';
import { NumberText } from '@/app/ui/words/number-text';
import { NumberLink } from '@/app/workshop/number-link';
import { readPart } from '@/lib/bench/part-records';
import { dayInZone } from '@/lib/calendar/day';
import { now } from '@/lib/clock';
import { staffNames } from '@/lib/jobs/records';
import { may } from '@/lib/people/rules/roles';
import { requireStaff } from '../../../who';
import { SavedNote } from '../../catalogue/saved-note';
import { addLotAction, savePartAction } from '../actions';
import { OfOrder } from '../of-order';
import { OrdersPart } from '../orders-part';
import { PartFields } from '../part-fields';

const readOnce = cache(readPart);

type Props = { params: Promise<{ id: string }>; searchParams: Promise<{ saved?: string }> };

export async function generateMetadata({ params }: Pick<Props, 'params'>): Promise<Metadata> {
  await requireStaff();
  const found = await readOnce((await params).id);
  return { title: found ? found.name : 'Not found' };
}

export default async function PartPage({ params, searchParams }: Props) {
  const staff = await requireStaff();
  const { id } = await params;
  const { saved } = await searchParams;
  const [part, workshop, people] = await Promise.all([readOnce(id), readWorkshop(), staffNames()]);
  if (!part) nothingHere();
  const { currency, locale } = workshop;
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/parts">Parts</TextLink>}
        title={part.name}
        lead={
          <>
            <NumberText text={part.code} />, {part.inStock} in stock.
          </>
        }
      />
      <SavedNote saved={saved} />
      <Table
        caption="Lots"
        rows={part.lots}
        rowKey={(lot) => lot.id}
        empty="No lot yet. Book the first delivery in below."
        columns={[
          {
            head: 'Lot',
            kind: 'rowhead',
            cell: (lot) => (
              <TextLink href={`/workshop/parts/lots/${lot.id}`}>
                <NumberText text={lot.code} />
              </TextLink>
            ),
          },
          { head: 'Supplier', cell: (lot) => lot.supplier },
          {
            head: 'Received on',
            cell: (lot) => <DayText day={lot.receivedOn} locale={locale} style="short" />,
          },
          { head: 'Pieces', kind: 'number', cell: (lot) => lot.received },
          { head: 'In units', kind: 'number', cell: (lot) => lot.used },
          {
            head: 'In stock',
            kind: 'number',
            cell: (lot) => (lot.recalls.length > 0 ? `${lot.inStock}, recalled` : lot.inStock),
          },
          {
            head: 'Cost of one',
            kind: 'number',
            cell: (lot) => <Money minor={lot.unitCostMinor} currency={currency} locale={locale} />,
          },
        ]}
      />
      <WaitingJobs waiting={part.waiting} locale={locale} />
      <OrdersPart
        part={part}
        orders={part.orders}
        suppliers={suppliersOf(part.lots)}
        today={dayInZone(now(), workshop.timeZone)}
        zone={workshop.timeZone}
        locale={locale}
        mayWork={may(staff.role, 'bench')}
        staff={people}
      />
      {may(staff.role, 'bench') ? (
        <div className="mt-12 grid gap-12 lg:grid-cols-2">
          <section aria-labelledby="lot">
            <h2 id="lot" className="mb-3">
              Book a delivery in
            </h2>
            <ActionForm action={addLotAction.bind(null, id)} label="Book a delivery in">
              <TextField
                name="code"
                label="Lot"
                hint="As on the bag or the delivery note."
                mono
                width="half"
                autoComplete="off"
              />
              <TextField
                name="supplier"
                label="Supplier"
                width="half"
                list={suppliersOf([...part.orders, ...part.lots])}
                defaultValue={part.orders[0]?.supplier}
              />
              <TextField
                name="receivedOn"
                label="Received on"
                type="date"
                width="half"
                defaultValue={dayInZone(now(), workshop.timeZone)}
              />
              <CountField name="received" label="Pieces" />
              <OfOrder orders={part.orders} locale={locale} isDelivery />
              <MoneyField name="unitCost" label="Cost of one piece, without tax" currency={currency} />
              <SubmitButton
                label="Book it in"
                busy="Booking in…"
                consequence="All of it counts as in stock."
              />
            </ActionForm>
          </section>
          <section aria-labelledby="part">
            <h2 id="part" className="mb-3">
              The part
            </h2>
            <ActionForm
              action={savePartAction.bind(null, id)}
              hidden={{ mark: part.mark }}
              label={`Change ${part.name}`}
            >
              <PartFields known={part} />
              <SubmitButton label="Save the part" busy="Saving…" kind="second" />
            </ActionForm>
          </section>
        </div>
      ) : null}
    </>
  );
}

function WaitingJobs(props: {
  waiting: NonNullable<Awaited<ReturnType<typeof readPart>>>['waiting'];
  locale: string;
}) {
  if (props.waiting.length === 0) return null;
  return (
    <div className="mt-10">
      <Table
        caption="Jobs that wait for it"
        rows={props.waiting}
        rowKey={(job) => job.jobNumber}
        columns={[
          {
            head: 'Job',
            kind: 'rowhead',
            cell: (job) => <NumberLink of="jobs" number={job.jobNumber} part="moves" />,
          },
          { head: 'Unit', cell: (job) => job.unit },
          { head: 'Pieces', kind: 'number', cell: (job) => job.quantity },
          {
            head: 'Promised for',
            cell: ({ promisedOn }) =>
              promisedOn ? <DayText day={promisedOn} locale={props.locale} style="short" /> : 'no promise',
          },
        ]}
      />
    </div>
  );
}

function suppliersOf(rows: readonly { supplier: string }[]): string[] {
  return [...new Set(rows.map(({ supplier }) => supplier))];
}
