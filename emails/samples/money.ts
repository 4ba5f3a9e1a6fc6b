import { day } from '@/lib/calendar/day';
import { claimJob, claimNumber, type Sample } from './sample';

/** Invoices, credit notes and receipts. */
export const moneySamples: readonly Sample[] = [
  {
    name: 'Invoice',
    content: {
      template: 'invoice-issued',
      data: { number: '2026-00042', balance: 8900, dueOn: day('2026-12-23') },
    },
  },
  {
    name: 'Invoice, paid already',
    content: {
      template: 'invoice-issued',
      data: { number: '2026-00042', balance: 0, dueOn: day('2026-12-23') },
    },
  },
  {
    name: 'Credit note, money comes back',
    content: {
      template: 'credit-note-issued',
      data: {
        number: '2026-00043',
        invoice: '2026-00042',
        amount: 1000,
        reason: 'The knob we fitted was not the one we agreed on.',
        balance: -1000,
      },
    },
  },
  {
    name: 'Credit note, less to pay',
    content: {
      template: 'credit-note-issued',
      data: {
        number: '2026-00043',
        invoice: '2026-00042',
        amount: 1000,
        reason: 'The knob we fitted was not the one we agreed on.',
        balance: 7900,
      },
    },
  },
  {
    name: 'Payment received',
    content: { template: 'payment-received', data: { amount: 8900, balance: 0 } },
  },
  {
    name: 'Payment received, some left',
    content: { template: 'payment-received', data: { amount: 4000, balance: 4900 } },
  },
  {
    name: 'Payment received, the unit is ready',
    content: { template: 'payment-received', data: { amount: 8900, balance: 0, isReady: true } },
  },
  {
    name: 'Payment received, the unit is ready and some is left',
    content: { template: 'payment-received', data: { amount: 4000, balance: 4900, isReady: true } },
  },
  {
    name: 'Payment received, the unit leaves although some is left',
    content: {
      template: 'payment-received',
      data: { amount: 4000, balance: 4900, isReady: true, isWaived: true },
    },
  },
  {
    name: 'Payment received after the unit left',
    content: { template: 'payment-received', data: { amount: 9600, balance: 0, isOver: true } },
  },
  {
    name: 'Payment received before any price was agreed',
    content: { template: 'payment-received', data: { amount: 2000, balance: -2000, isPriceOpen: true } },
    job: { agreed: 0, isPriceOpen: true, promisedOn: null },
  },
  {
    name: 'Money given back',
    content: { template: 'payment-received', data: { amount: -1000, balance: 0 } },
  },
  {
    name: 'Postage of a covered claim not paid back',
    content: {
      template: 'postage-ended',
      data: {
        claimNumber,
        amount: 560,
        reason: 'You told us that the parcel cost you nothing.',
      },
    },
    job: claimJob,
  },
  {
    name: 'The rest of the postage of a covered claim not paid back',
    content: {
      template: 'postage-ended',
      data: { claimNumber, amount: 560, paid: 56, reason: 'The receipt is of another parcel.' },
    },
    job: claimJob,
  },
  {
    name: 'A part of the postage of a covered claim paid back',
    content: {
      template: 'payment-received',
      data: { amount: -56, balance: 0, isPostage: true, postageLeft: 504 },
    },
    job: claimJob,
  },
  {
    name: 'Postage of a covered claim paid back',
    content: { template: 'payment-received', data: { amount: -500, balance: 0, isPostage: true } },
    job: claimJob,
  },
];
