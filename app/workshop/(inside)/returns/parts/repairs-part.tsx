import { type Column, Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import { formatMoney } from '@/lib/money/amount';
import type { RepairFigure } from '@/lib/returns/repair-figures';
import { byWorry } from '@/lib/returns/rules/by-worry';
import { CARRIES_WORD } from '@/lib/returns/rules/repair-worth-words';
import { shareWords } from '@/lib/returns/rules/share-words';
import type { WorkshopCard } from '@/lib/workshop/card';

type RepairsPartProps = { figures: readonly RepairFigure[]; workshop: WorkshopCard; hasCost: boolean };

/**
 * Every repair that was sent back: what asks for a decision first, what says nothing yet folded away below it. Money for
 * the owner alone.
 */
export function RepairsPart({ figures, workshop, hasCost }: RepairsPartProps) {
  const { currency, locale } = workshop;
  const money = (minor: number) => formatMoney(minor, currency, locale);
  const columns: Column<RepairFigure>[] = [
    {
      head: 'Repair',
      kind: 'rowhead',
      cell: ({ terms }) => (
        <TextLink href={`/workshop/returns/repairs/${terms.id}`}>{`${terms.name}, ${terms.model}`}</TextLink>
      ),
    },
    { head: 'Returned, 95% interval', kind: 'number', cell: ({ tally }) => shareWords(tally, locale) },
  ];
  const costs: Column<RepairFigure>[] = [
    {
      head: 'Claims cost',
      kind: 'number',
      cell: ({ tally }) => `${money(tally.costMinor)}${tally.uncosted > 0 ? `, ${tally.uncosted} open` : ''}`,
    },
    {
      head: 'Reserve, upper',
      kind: 'number',
      cell: ({ reserve, worth }) =>
        reserve.known && worth.carries !== 'too-few'
          ? `${money(reserve.reserve.reserveMinor)}, ${money(reserve.reserve.upperMinor)}`
          : '',
    },
    {
      head: 'Add to the price',
      kind: 'number',
      cell: ({ addMinor }) => (addMinor === null ? '' : money(addMinor)),
    },
    { head: 'Its price', cell: ({ worth }) => CARRIES_WORD[worth.carries] },
  ];
  const { told, quiet } = byWorry(figures, ({ worth, tally }) => ({
    carries: worth.carries,
    returned: tally.returned,
    units: tally.units,
  }));
  return (
    <section aria-labelledby="repairs">
      <h2 id="repairs">Repairs</h2>
      <Table
        caption="What came back, by repair"
        rows={told}
        rowKey={({ terms }) => terms.id}
        empty={
          quiet.length > 0
            ? 'Nothing has come back yet.'
            : 'Nothing has been sent back with a certificate yet.'
        }
        columns={hasCost ? [...columns, ...costs] : columns}
      />
      {quiet.length > 0 ? (
        <details className="mt-4">
          <summary>{quietWords(quiet.length)}</summary>
          <Table
            caption="Nothing came back, and too few to say more"
            rows={quiet}
            rowKey={({ terms }) => terms.id}
            columns={columns}
          />
        </details>
      ) : null}
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

function quietWords(count: number): string {
  return count === 1
    ? 'One more repair: nothing came back, too few units to say more'
    : `${count} more repairs: nothing came back, too few units to say more`;
}
