import type { Metadata } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { LinkButton } from '@/app/ui/page/button';
import { PageHead } from '@/app/ui/page/page-head';
import { type Column, Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { NumberLink } from '@/app/workshop/number-link';
import { formatDay } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { formatMoney } from '@/lib/money/amount';
import { type DispatchRow, listDispatch } from '@/lib/parcels/list-dispatch';
import { countryAbroad } from '@/lib/parcels/rules/country-abroad';
import { needsCustomsNote } from '@/lib/parcels/rules/customs';
import type { WorkshopCard } from '@/lib/workshop/card';
import { requireStaff } from '../../who';

export const metadata: Metadata = { title: 'Dispatch' };

export default async function DispatchPage() {
  await requireStaff('dispatch');
  const [list, workshop] = await Promise.all([listDispatch({ now: now() }), readWorkshop()]);
  const { locale } = workshop;
  const money = (minor: number) => formatMoney(minor, workshop.currency, locale);
  const common = columns(workshop);
  return (
    <>
      <PageHead
        title="Dispatch"
        lead={formatDay(list.today, locale, 'weekday')}
        next={
          list.mayGo.length === 0
            ? 'nothing that is ready may go yet.'
            : `pack what may go, and name its carrier on its job sheet, or say there that it is collected.`
        }
      />
      <section aria-labelledby="may-go">
        <h2 id="may-go">{`May go today (${list.mayGo.length})`}</h2>
        <Table
          caption="Ready, and nothing is owed"
          captionHidden
          rows={list.mayGo}
          rowKey={(row) => row.number}
          empty="No unit is ready, paid for and free to go."
          columns={[...common, { head: 'Customs', cell: (row) => <Customs row={row} workshop={workshop} /> }]}
        />
      </section>
      <section aria-labelledby="waits">
        <h2 id="waits">{`Ready, not paid yet (${list.waits.length})`}</h2>
        <Table
          caption="Ready, and still to be paid for"
          captionHidden
          rows={list.waits}
          rowKey={(row) => row.number}
          empty="No ready unit waits for its money."
          columns={[...common, { head: 'Left to pay', kind: 'number', cell: (row) => money(row.owed) }]}
        />
      </section>
      {list.asked.length === 0 ? null : (
        <section aria-labelledby="asked">
          <h2 id="asked">{`Came back, address not confirmed (${list.asked.length})`}</h2>
          <p>
            Their customers were asked whether the address is right, and have not answered. A message from
            them, or a contact put right, moves the unit up to those that may go. Did they tell you another
            way that it is right? Then save their contact as it stands.
          </p>
          <Table
            caption="Came back undelivered, and wait for the customer’s answer"
            captionHidden
            rows={list.asked}
            rowKey={(row) => row.number}
            columns={common}
          />
        </section>
      )}
      <section aria-labelledby="sent">
        <h2 id="sent">{`Sent today (${list.sent.reduce((sum, each) => sum + each.rows.length, 0)})`}</h2>
        {list.sent.length === 0 ? <p>Nothing has gone yet.</p> : null}
        {list.sent.map(({ carrier, rows }) => (
          <div key={carrier}>
            <Table
              caption={carrier}
              rows={rows}
              rowKey={(row) => row.number}
              columns={[
                ...common.filter((column) => column.head !== 'Ready since'),
                { head: 'Carrier’s reference', cell: (row) => <NumberText text={row.reference} /> },
              ]}
            />
            <p>
              <LinkButton
                href={`/workshop/dispatch/hand-over?carrier=${encodeURIComponent(carrier)}`}
                kind="second"
              >
                {`Hand-over list for ${carrier}`}
              </LinkButton>
            </p>
          </div>
        ))}
      </section>
      {list.collected.length === 0 ? null : (
        <section aria-labelledby="collected">
          <h2 id="collected">{`Collected today (${list.collected.length})`}</h2>
          <Table
            caption="Collected by their customers"
            captionHidden
            rows={list.collected}
            rowKey={(row) => row.number}
            columns={common.filter((column) => column.head !== 'Ready since' && column.head !== 'Goes to')}
          />
        </section>
      )}
    </>
  );
}

/** A country is named where it is another one. */
function goesTo(row: DispatchRow, workshop: WorkshopCard): string {
  const country = countryAbroad(row.country, workshop);
  return [row.customer, row.town, ...(country === null ? [] : [country])].join(', ');
}

function columns(workshop: WorkshopCard): Column<DispatchRow>[] {
  const { locale } = workshop;
  return [
    { head: 'Job', kind: 'rowhead', cell: (row) => <NumberLink of="jobs" number={row.number} /> },
    { head: 'Unit', cell: (row) => row.unit },
    { head: 'Goes to', cell: (row) => goesTo(row, workshop) },
    { head: 'Ready since', cell: (row) => (row.readyOn ? formatDay(row.readyOn, locale, 'short') : '') },
  ];
}

function Customs({ row, workshop }: { row: DispatchRow; workshop: WorkshopCard }) {
  if (!needsCustomsNote({ from: workshop.country, to: row.country, free: workshop.customsFree }))
    return 'none';
  return <TextLink href={`/workshop/jobs/${row.number}/customs`}>Customs note</TextLink>;
}
