import { Table } from '@/app/ui/page/table';
import { Money } from '@/app/ui/words/money';
import { formatInstant } from '@/lib/calendar/format';
import type { PastPrice } from '@/lib/catalogue/price-history';
import { showRate } from '@/lib/money/rate';
import type { WorkshopCard } from '@/lib/workshop/card';
import { TAX_WORDS } from '../../words';

/** What a repair has cost since when, the newest first. */
export function PriceHistoryTable({
  prices,
  workshop,
}: {
  prices: readonly PastPrice[];
  workshop: WorkshopCard;
}) {
  const { currency, locale, timeZone, pricesIncludeTax } = workshop;
  const newest = prices[0];
  return (
    <>
      <Table
        caption="Prices"
        captionHidden
        rows={prices}
        rowKey={(price) => price.id}
        empty="No change of price was kept yet."
        columns={[
          {
            head: 'Since',
            kind: 'rowhead',
            cell: (price) => (
              <time dateTime={price.since.toISOString()}>
                {formatInstant(price.since, { locale, zone: timeZone })}
              </time>
            ),
          },
          {
            head: 'Price',
            kind: 'number',
            cell: (price) => <Money minor={price.priceMinor} currency={currency} locale={locale} />,
          },
          { head: 'Tax', cell: taxText },
          { head: 'Set by', cell: (price) => price.who ?? 'the program' },
        ]}
      />
      {newest && newest.isGross !== pricesIncludeTax ? (
        <p>
          Prices in the catalogue {pricesIncludeTax ? 'include tax' : 'do not include tax'} now, which was set
          after the newest of these: its figure counts{' '}
          {pricesIncludeTax ? 'with the tax in it' : 'before tax'}.
        </p>
      ) : null}
    </>
  );
}

function taxText({ isGross, taxCategory, taxRateBps }: PastPrice): string {
  if (taxCategory !== 'S') return TAX_WORDS[taxCategory];
  return `${showRate(taxRateBps)}, ${isGross ? 'in the price' : 'on top'}`;
}
