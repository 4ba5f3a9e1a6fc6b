import type { Metadata } from 'next';
import { PageHead } from '@/app/ui/page/page-head';
import { Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { readOrderList } from '@/lib/bench/order-records';
import { now } from '@/lib/clock';
import { requireStaff } from '../../../who';

export const metadata: Metadata = { title: 'Order list' };

export default async function OrderPage() {
  await requireStaff();
  const { rows, jobs } = await readOrderList(now());
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/parts">Parts</TextLink>}
        title="Order list"
        lead={`Parts at their mark or below once ${jobs === 1 ? 'the one open repair has' : `the ${jobs} open repairs have`} what they usually need. A part without a mark only where there is not enough for them.`}
      >
        <TextLink href="/workshop/parts/order/order.csv" file>
          Order list (CSV)
        </TextLink>
      </PageHead>
      <Table
        caption="Order list"
        captionHidden
        rows={rows}
        rowKey={(row) => row.id}
        empty="Nothing to order: every part stays above its mark."
        columns={[
          {
            key: 'part',
            head: 'Part',
            kind: 'rowhead',
            cell: (row) => <TextLink href={`/workshop/parts/${row.id}`}>{row.name}</TextLink>,
          },
          { key: 'code', head: 'Code', cell: (row) => <NumberText text={row.code} /> },
          { key: 'order', head: 'Order at least', kind: 'number', cell: (row) => row.order },
          { key: 'stock', head: 'In stock', kind: 'number', cell: (row) => row.inStock },
          { key: 'needed', head: 'Needed by open jobs', kind: 'number', cell: (row) => row.needed },
          { key: 'mark', head: 'Order again at', kind: 'number', cell: (row) => row.reorderAt ?? 'no more' },
          { key: 'from', head: 'Last from', cell: (row) => row.supplier || 'nobody yet' },
        ]}
      />
      <p className="mt-6 max-w-text text-small text-soft">
        What a repair usually needs stands with it in the catalogue. Pieces that a job has taken already are
        not counted again.
      </p>
    </>
  );
}
