import type { Metadata } from 'next';
import { LinkButton } from '@/app/ui/page/button';
import { PageHead } from '@/app/ui/page/page-head';
import { Table } from '@/app/ui/page/table';
import { Tag } from '@/app/ui/page/tag';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { listParts, type PartRow } from '@/lib/bench/part-records';
import { describePeriod } from '@/lib/calendar/period';
import { may } from '@/lib/people/rules/roles';
import { requireStaff } from '../../who';

export const metadata: Metadata = { title: 'Parts' };

export default async function PartsPage() {
  const staff = await requireStaff();
  const parts = await listParts();
  const low = parts.filter((part) => part.isLow).length;
  return (
    <>
      <PageHead
        title="Parts"
        lead="What is in stock, by lot: each fitted part leads back to the bag it came from."
        next={low === 0 ? undefined : lowText(low)}
      >
        {may(staff.role, 'bench') ? <LinkButton href="/workshop/parts/new">Add a part</LinkButton> : null}
        <LinkButton href="/workshop/parts/order" kind="second">
          Order list
        </LinkButton>
      </PageHead>
      <Table
        caption="Parts"
        captionHidden
        rows={parts}
        rowKey={(part) => part.id}
        empty="No part yet. Add one, then book its first delivery in as a lot."
        columns={[
          {
            head: 'Part',
            kind: 'rowhead',
            cell: (part) => <TextLink href={`/workshop/parts/${part.id}`}>{part.name}</TextLink>,
          },
          { head: 'Code', cell: (part) => <NumberText text={part.code} /> },
          { head: 'In stock', kind: 'number', cell: (part) => part.inStock },
          { head: 'Lots', kind: 'number', cell: (part) => part.lots },
          { head: 'Supplier’s warranty', cell: (part) => (part.term ? describePeriod(part.term) : 'none') },
          { head: 'Order', cell: stockTag },
        ]}
      />
    </>
  );
}

function stockTag(part: PartRow) {
  const coming = part.onOrder > 0 ? `${part.onOrder} on order` : null;
  if (part.reorderAt === null) return coming ?? 'ordered no more';
  if (part.inStock === 0)
    return <Tag tone={coming ? 'warn' : 'stop'}>{coming ? `none left, ${coming}` : 'none left'}</Tag>;
  if (part.isLow) return <Tag tone="warn">{coming ? `order again, ${coming}` : 'order again'}</Tag>;
  return coming ? <Tag tone="waiting">{coming}</Tag> : <Tag tone="good">enough</Tag>;
}

function lowText(low: number): string {
  return low === 1
    ? 'one part is at its mark or below; order it again.'
    : `${low} parts are at their mark or below; order them again.`;
}
