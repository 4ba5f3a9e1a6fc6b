import { day } from '@/lib/calendar/day';
import type { InvoiceData } from '@/lib/documents/invoice';
import type { ReceiptData } from '@/lib/documents/receipt';
import { invoiceTotals } from '@/lib/invoices/rules/totals';
import { waysToPay } from '@/lib/invoices/rules/ways-to-pay';
import { price } from './price';
import { customer, job, setting, stamp, statusUrl, unit, workshop } from './shared';

export const receipt = {
  setting,
  workshop,
  job,
  invoice: '2026-0148',
  customer,
  unit,
  statusUrl,
  stamps: [
    stamp('Booked', '2026-12-03'),
    stamp('Arrived', '2026-12-07'),
    stamp('Proved', '2026-12-11'),
    stamp('Paid', '2026-12-11'),
    stamp('Sent back', null),
  ],
  price,
  currency: price.currency,
  credited: 0,
  payments: [{ amount: 13060, on: day('2026-12-11'), method: 'Bank transfer', reference: 'J-CE9S-AWRW' }],
  next: [
    'We post your recorder on the next working day and send you the tracking number.',
    'The certificate comes with it and by e-mail. It costs nothing more.',
  ],
} satisfies ReceiptData;

const workshopParty = {
  name: workshop.name,
  addressLines: ['4 Ropewalk Yard'],
  postcode: 'QM4 7QY',
  town: 'Sandmouth',
  country: 'GB',
  email: 'bench@quay-alder.example.org',
};

const invoiced = invoiceTotals(
  [
    { description: 'USB-C socket replaced and anchored', amount: 9600, category: 'S', rateBps: 2000 },
    { description: 'Two traces laid again with enamelled wire', amount: 4055, category: 'S', rateBps: 2000 },
    { description: 'Off for waiting two days longer', amount: -595, category: 'S', rateBps: 2000 },
    { description: 'Postage back, exempt', amount: 640, category: 'E', rateBps: 0 },
  ] as const,
  true,
);

export const invoice: InvoiceData = {
  setting,
  workshop,
  isGross: true,
  job,
  unit,
  statusUrl,
  paper: {
    kind: 'invoice',
    number: '2026-00148',
    corrects: null,
    reason: '',
    currency: 'EUR',
    issuedOn: day('2026-12-11'),
    suppliedOn: day('2026-12-11'),
    dueOn: day('2026-12-25'),
    seller: {
      ...workshopParty,
      phone: '01632 960417',
      taxNumber: 'GB 000 0000 00',
      taxName: 'VAT',
      taxExemptReason: 'Universal postal service, exempt.',
      bankHolder: 'Quay & Alder',
      iban: 'DE71110220330123456789',
      bic: 'BHBLDEHHXXX',
    },
    buyer: {
      ...workshopParty,
      name: customer,
      addressLines: ['12 Chandler Row', 'Flat 3'],
      postcode: 'QM2 7HB',
      email: 'mira.oakenfold@example.org',
    },
    prepaid: 2000,
    ...invoiced,
  },
  ways: waysToPay(
    {
      name: workshop.name,
      bankHolder: 'Quay & Alder',
      iban: 'DE71110220330123456789',
      bic: 'BHBLDEHHXXX',
      payLink: 'https://pay.example.org/quay/{reference}?sum={amount}&in={currency}',
      paymentText: 'We post your unit on the next working day after your payment is here.',
    },
    { amount: invoiced.payable - 2000, currency: 'EUR', reference: '2026-00148' },
  ),
};

export const creditNote: InvoiceData = {
  ...invoice,
  paper: {
    ...invoice.paper,
    kind: 'credit-note',
    number: '2026-00151',
    corrects: { number: '2026-00148', issuedOn: day('2026-12-11') },
    reason: 'The socket we fitted was not the one we agreed on.',
    prepaid: 0,
  },
  ways: null,
};
