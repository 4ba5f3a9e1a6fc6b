import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import { PriceTable } from '@/app/ui/page/price-table';

const money = (minor: number) => `£${(minor / 100).toFixed(2)}`;
const LINES = [
  { description: 'Socket replaced', amount: 4500 },
  { description: 'Pads rebuilt', amount: 2400 },
];
const SUMS = { net: 6900, tax: 1380, gross: 8280 };

function rowsOf(html: string): string[] {
  return (html.match(/<tr[\s\S]*?<\/tr>/g) ?? []).map((row) =>
    row
      .replace(/<[^>]+>/g, ' ')
      .replace(/\s+/g, ' ')
      .trim(),
  );
}

test('a price that is kept before tax has its tax between the lines and the total, which stands apart', () => {
  const price = { ...SUMS, lines: LINES, isGross: false, taxName: 'VAT' };
  const html = renderToStaticMarkup(<PriceTable caption="Agreed" price={price} money={money} />);
  expect(html).toContain('<caption>Agreed, amounts before tax</caption>');
  expect(rowsOf(html)).toEqual([
    'What Amount',
    'Socket replaced £45.00',
    'Pads rebuilt £24.00',
    'Together, before tax £69.00',
    'VAT £13.80',
    'Total with tax £82.80',
  ]);
  expect(html.slice(html.indexOf('<tfoot'))).toContain('Total with tax');
});

test('a changed price has every line and both totals', () => {
  const price = { ...SUMS, lines: LINES, isGross: true, net: 5750, tax: 1150, gross: 6900, taxName: 'VAT' };
  const html = renderToStaticMarkup(
    <PriceTable
      caption="The agreed price and the new one"
      price={price}
      money={money}
      agreed={{
        lines: [
          { description: 'Socket replaced', was: 4500, now: 4500 },
          { description: 'Pads rebuilt', was: null, now: 2400 },
        ],
        sums: { net: 3750, tax: 750, gross: 4500 },
      }}
    />,
  );
  expect(rowsOf(html)).toEqual([
    'What Agreed New',
    'Socket replaced £45.00 £45.00',
    'Pads rebuilt – £24.00',
    'Total with tax £45.00 £69.00',
    'VAT in it £7.50 £11.50',
  ]);
});
