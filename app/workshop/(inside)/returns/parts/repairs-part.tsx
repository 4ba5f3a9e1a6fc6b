import { type Column, Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import { formatMoney } from '@/lib/money/amount';
import type { RepairFigure } from '@/lib/returns/repair-figures';
import { CARRIES_WORD } from '@/lib/returns/rules/repair-worth-words';
import { shareWords } from '@/lib/returns/rules/share-words';
import type { WorkshopCard } from '@/lib/workshop/card';

type RepairsPartProps = { figures: readonly RepairFigure[]; workshop: WorkshopCard; hasCost: boolean };

/** Every repair that was sent back, in the catalogue's order; money for the owner alone. */
export function RepairsPart({ figures, workshop, hasCost }: RepairsPartProps) {
  const { currency, locale } = workshop;
  const money = (minor: number) => formatMoney(minor, currency, locale);
  const columns: Column<RepairFigure>[] = [
    {
      key: 'repair',
      head: 'Repair',
      kind: 'rowhead',
      cell: ({ terms }) => (
        <TextLink href={`/workshop/returns/repairs/${terms.id}`}>{`${terms.name}, ${terms.model}`}</TextLink>
      ),
    },
    {
      key: 'returned',
      head: 'Returned, 95% interval',
      kind: 'number',
      cell: ({ tally }) => shareWords(tally, locale),
    },
  ];
  const costs: Column<RepairFigure>[] = [
    {
      key: 'spent',
      head: 'Claims cost',
      kind: 'number',
      cell: ({ tally }) => `${money(tally.costMinor)}${tally.uncosted > 0 ? `, ${tally.uncosted} open` : ''}`,
    },
    {
      key: 'reserve',
      head: 'Reserve, upper',
      kind: 'number',
      cell: ({ reserve, worth }) =>
        reserve.known && worth.carries !== 'too-few'
          ? `${money(reserve.reserve.reserveMinor)}, ${money(reserve.reserve.upperMinor)}`
          : '',
    },
    {
      key: 'add',
      head: 'Add to the price',
      kind: 'number',
      cell: ({ addMinor }) => (addMinor === null ? '' : money(addMinor)),
    },
    { key: 'worth', head: 'Its price', cell: ({ worth }) => CARRIES_WORD[worth.carries] },
  ];
  return (
    <section aria-labelledby="repairs">
      <h2 id="repairs">Repairs</h2>
      <Table
        caption="What came back, by repair"
        rows={figures}
        rowKey={({ terms }) => terms.id}
        empty="Nothing has been sent back with a certificate yet."
        columns={hasCost ? [...columns, ...costs] : columns}
      />
      {hasCost ? (
        <p className="mt-3 max-w-[42rem] text-small">
          The reserve is for one repair: the chance of a covered claim within its term, times the mean cost of
          such claims. The upper figure holds in at least nine of ten such reckonings. What to add is the
          upper figure, rounded up, without tax.
        </p>
      ) : null}
    </section>
  );
}
