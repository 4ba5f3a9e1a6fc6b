import type { ReactNode } from 'react';
import type { LineChange } from '@/lib/quotes/rules/lines';
import { type ShownPrice, type Sums, sumRows } from '@/lib/quotes/rules/shown-price';
import { type Column, Table } from './table';

type PriceTableProps = {
  caption: string;
  price: ShownPrice;
  money: (minor: number) => string;
  /** the price agreed before, line by line against this one */
  agreed?: { lines: readonly LineChange[]; sums: Sums } | undefined;
};

type Row = { key: string; what: string; was: number | null; now: number | null };

/**
 * The lines of a price and what they come to, adding up: in a table of two amounts where one was agreed before. The
 * caption says whether the lines have tax in them.
 *
 * ```tsx
 * <PriceTable caption="What it costs" price={shownPrice(revision, workshop.taxName)} money={money} />
 * ```
 */
export function PriceTable({ caption, price, money, agreed }: PriceTableProps) {
  const lines =
    agreed?.lines ?? price.lines.map(({ description, amount }) => ({ description, was: null, now: amount }));
  const sums = sumRows(price);
  const rows: Row[] = [
    ...lines.map((line, place) => ({
      key: String(place),
      what: line.description,
      was: line.was,
      now: line.now,
    })),
    ...sums
      .filter(({ place }) => place === 'before')
      .map(({ sum, words }) => ({ key: sum, what: words, was: agreed?.sums[sum] ?? null, now: price[sum] })),
  ];
  const written = (minor: number | null) => (minor === null ? '–' : money(minor));
  const now: Column<Row> = {
    head: agreed ? 'New' : 'Amount',
    kind: 'number',
    cell: (row) => written(row.now),
  };
  return (
    <Table
      caption={`${caption}${price.taxName === null ? '' : `, amounts ${price.isGross ? 'with' : 'before'} tax`}`}
      columns={[
        { head: 'What', kind: 'rowhead', cell: (row) => row.what },
        ...(agreed
          ? [{ head: 'Agreed', kind: 'number', cell: (row: Row) => written(row.was) } satisfies Column<Row>]
          : []),
        now,
      ]}
      rows={rows}
      rowKey={(row) => row.key}
      foot={sums
        .filter(({ place }) => place !== 'before')
        .map(({ sum, words, place }) => (
          <FootRow key={sum} words={words} isWithin={place === 'within'}>
            {[...(agreed ? [money(agreed.sums[sum])] : []), money(price[sum])]}
          </FootRow>
        ))}
      keep
    />
  );
}

function FootRow({
  words,
  isWithin,
  children,
}: {
  words: string;
  isWithin: boolean;
  children: readonly ReactNode[];
}) {
  return (
    <tr className={isWithin ? 'table-within' : undefined}>
      <th scope="row">{words}</th>
      {children.map((amount, place) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: at most two amounts, in the order of the columns
        <td key={place} data-kind="number">
          {amount}
        </td>
      ))}
    </tr>
  );
}
