import { totals } from '@/lib/money/tax';

const vat = { category: 'S', rateBps: 2000 } as const;
const priced = [
  {
    description: 'Inspection, taken off below when the repair goes ahead',
    quantity: '',
    amount: 1800,
    ...vat,
  },
  { description: 'Replace the USB socket', quantity: '', amount: 6400, ...vat },
  { description: 'Rebuild four lifted pads', quantity: '1.5 h', amount: 5400, ...vat },
  { description: 'USB Type-C socket', quantity: '1', amount: 480, ...vat },
  { description: 'Inspection fee taken off', quantity: '', amount: -1800, ...vat },
  { description: 'Postage back, tracked', quantity: '', amount: 780, ...vat },
];

export const price = {
  currency: 'GBP',
  mode: 'gross' as const,
  lines: priced.map(({ description, quantity, amount }) => ({ description, quantity, amount })),
  totals: totals(priced, 'gross'),
  taxName: 'VAT',
  taxNumber: 'GB 000 0000 00',
  taxNotes: [],
};
