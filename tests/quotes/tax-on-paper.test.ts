import { expect, it } from 'vitest';
import { type QuoteLine, taxOnPaper } from '@/lib/quotes/rules/lines';

const line = (category: QuoteLine['category'], rateBps = 0): QuoteLine => ({
  kind: 'labour',
  description: 'USB-C socket replaced',
  amount: 7200,
  category,
  rateBps,
});
const house = { taxName: 'VAT', taxNumber: 'GB 000 0000 00', taxExemptReason: 'Small business, exempt' };

it.each([
  ['taxed', [line('S', 2000)], house, { taxName: 'VAT', taxNumber: house.taxNumber, taxNotes: [] }],
  [
    'exempt beside taxed: the reason is given',
    [line('S', 2000), line('E')],
    house,
    { taxName: 'VAT', taxNumber: house.taxNumber, taxNotes: [house.taxExemptReason] },
  ],
  [
    'exempt, and the workshop gave no reason',
    [line('E')],
    { ...house, taxExemptReason: '' },
    { taxName: 'VAT', taxNumber: house.taxNumber, taxNotes: [] },
  ],
  [
    'outside the tax, by a workshop without a number',
    [line('O')],
    { ...house, taxNumber: '' },
    { taxName: null, taxNumber: null, taxNotes: [] },
  ],
])('%s', (_name, lines, of, expected) => {
  expect(taxOnPaper(lines, lines, of)).toEqual(expected);
});

it('a reason is given only for what is left of the lines', () => {
  expect(taxOnPaper([line('S', 2000), line('E')], [{ category: 'S' }], house).taxNotes).toEqual([]);
});
