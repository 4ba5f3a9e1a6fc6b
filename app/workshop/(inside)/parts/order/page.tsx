import type { Metadata } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { PageHead } from '@/app/ui/page/page-head';
import { type Column, Table } from '@/app/ui/page/table';
import { Tag } from '@/app/ui/page/tag';
import { TextLink } from '@/app/ui/page/text-link';
import { DayText } from '@/app/ui/words/day-text';
import { NumberText } from '@/app/ui/words/number-text';
import { readOrderList } from '@/lib/bench/order-records';
import { daysOver, expectedWords, stillToCome } from '@/lib/bench/rules/on-order';
import type { StoredOrder } from '@/lib/bench/stored-orders';
import type { Day } from '@/lib/calendar/day';
import { now } from '@/lib/clock';
import { may } from '@/lib/people/rules/roles';
import { requireStaff } from '../../../who';
import { SavedNote } from '../../catalogue/saved-note';
import { OrderedCell, OrderedForm } from './ordered-form';

export const metadata: Metadata = { title: 'Order list' };

type Row = Awaited<ReturnType<typeof readOrderList>>['rows'][number];
type Props = { searchParams: Promise<{ saved?: string }> };

export default async function OrderPage({ searchParams }: Props) {
  const staff = await requireStaff();
  const { saved } = await searchParams;
  const [{ rows, jobs, orders, today }, { locale }] = await Promise.all([
    readOrderList(now()),
    readWorkshop(),
  ]);
  const mayOrder = may(staff.role, 'bench') && rows.length > 0;
  const list = (
    <Table
      caption="Order list"
      captionHidden
      rows={rows}
      rowKey={(row) => row.id}
      empty="Nothing to order: every part stays above its mark."
      columns={mayOrder ? [...COLUMNS, ORDERED] : COLUMNS}
    />
  );
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/parts">Parts</TextLink>}
        title="Order list"
        lead={`Parts at their mark or below once ${jobs === 1 ? 'the one open job has' : `the ${jobs} open jobs have`} what they need and what is on order has come. A part without a mark only where there is not enough for them.`}
      >
        <TextLink href="/workshop/parts/order/order.csv" file>
          Order list (CSV)
        </TextLink>
      </PageHead>
      <SavedNote saved={saved}>Noted as ordered.</SavedNote>
      {mayOrder ? (
        <OrderedForm rows={rows} today={today}>
          {list}
        </OrderedForm>
      ) : (
        list
      )}
      <p className="mt-6 max-w-text text-small text-soft">
        What a repair usually needs stands with it in the catalogue; a job that waits for a part adds that
        one. Pieces that a job has taken already are not counted again.
      </p>
      {orders.length > 0 ? <OnOrder orders={orders} today={today} locale={locale} /> : null}
    </>
  );
}

const COLUMNS: readonly Column<Row>[] = [
  {
    head: 'Part',
    kind: 'rowhead',
    cell: (row) => <TextLink href={`/workshop/parts/${row.id}`}>{row.name}</TextLink>,
  },
  { head: 'Code', kind: 'short', cell: (row) => <NumberText text={row.code} /> },
  { head: 'Order at least', kind: 'number', cell: (row) => row.order },
  { head: 'In stock', kind: 'number', cell: (row) => row.inStock },
  { head: 'On order', kind: 'number', cell: (row) => row.onOrder },
  { head: 'Needed by open jobs', kind: 'number', cell: (row) => row.needed },
  { head: 'Order again at', kind: 'number', cell: (row) => row.reorderAt ?? 'no more' },
  { head: 'Last from', cell: (row) => row.supplier || 'nobody yet' },
];

const ORDERED: Column<Row> = { head: 'Ordered now', cell: (row) => <OrderedCell row={row} /> };

/** What is on its way, what is over its day first. */
function OnOrder({ orders, today, locale }: { orders: readonly StoredOrder[]; today: Day; locale: string }) {
  return (
    <section aria-labelledby="on-order" className="mt-10">
      <h2 id="on-order" className="mb-3">
        On order
      </h2>
      <Table
        caption="On order"
        captionHidden
        rows={orders}
        rowKey={(order) => order.id}
        columns={[
          {
            head: 'Part',
            kind: 'rowhead',
            cell: (order) => (
              <TextLink href={`/workshop/parts/${order.partId}#on-order`}>{order.part}</TextLink>
            ),
          },
          { head: 'Still to come', kind: 'number', cell: stillToCome },
          { head: 'From', cell: (order) => order.supplier },
          {
            head: 'Ordered on',
            cell: (order) => <DayText day={order.orderedOn} locale={locale} style="short" />,
          },
          {
            head: 'Expected',
            cell: ({ expectedOn }) => {
              const words = expectedWords(expectedOn, { today, locale });
              return daysOver(expectedOn, today) > 0 ? <Tag tone="warn">{words}</Tag> : words;
            },
          },
        ]}
      />
      <p className="mt-6 max-w-text text-small text-soft">
        Pieces that come are booked in under their part, which also keeps another day, or that nothing more
        comes.
      </p>
    </section>
  );
}
