import { describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import {
  isMonthOver,
  JOURNAL_HEAD,
  type JournalPaper,
  type JournalPayment,
  journalRows,
} from '@/lib/invoices/rules/journal';

const PAPER: JournalPaper = {
  kind: 'invoice',
  number: '2026-00002',
  corrects: null,
  on: day('2026-11-25'),
  job: 'J-4K7Q-X290',
  customer: 'Ines Farrow',
  currency: 'GBP',
  breakdown: [
    { category: 'S', rateBps: 2000, base: 6000, tax: 1200 },
    { category: 'S', rateBps: 550, base: 1000, tax: 55 },
  ],
  rounding: -1,
};
const PAYMENT: JournalPayment = {
  on: day('2026-11-25'),
  enteredOn: day('2026-12-02'),
  job: 'J-4K7Q-X290',
  customer: 'Ines Farrow',
  currency: 'GBP',
  amount: 8254,
  purpose: 'price',
  method: 'transfer',
  reference: 'RF1',
};
/** The rows under their heads, empty cells left out. */
const told = (papers: JournalPaper[], payments: JournalPayment[] = []) =>
  journalRows(papers, payments).map((cells) =>
    Object.fromEntries(JOURNAL_HEAD.map((head, at) => [head, cells[at]]).filter(([, cell]) => cell !== '')),
  );

describe('a bookkeeper’s journal', () => {
  const shared = { Date: '2026-11-25', Job: 'J-4K7Q-X290', Customer: 'Ines Farrow', Currency: 'GBP' };

  it('has a row for each tax rate of an invoice, and one for its rounding', () => {
    const paper = { ...shared, Kind: 'invoice', Number: '2026-00002', 'Entered on': '2026-11-25' };
    expect(told([PAPER])).toEqual([
      {
        ...paper,
        ...{
          'Tax category': 'S',
          'Rate %': '20',
          Net: '60.00',
          Tax: '12.00',
          Rounding: '0.00',
          Total: '72.00',
        },
      },
      {
        ...paper,
        ...{
          'Tax category': 'S',
          'Rate %': '5.5',
          Net: '10.00',
          Tax: '0.55',
          Rounding: '0.00',
          Total: '10.55',
        },
      },
      { ...paper, Net: '0.00', Tax: '0.00', Rounding: '-0.01', Total: '-0.01' },
    ]);
    expect(told([{ ...PAPER, rounding: 0 }])).toHaveLength(2);
  });

  it('has a credit note below zero, with the invoice it corrects', () => {
    const note = { ...PAPER, kind: 'credit-note' as const, number: '2026-00003', corrects: '2026-00002' };
    expect(told([note])).toMatchObject([
      { Kind: 'credit note', Corrects: '2026-00002', Net: '-60.00', Tax: '-12.00', Total: '-72.00' },
      { Net: '-10.00', Tax: '-0.55', Total: '-10.55' },
      { Net: '0.00', Rounding: '0.01', Total: '0.01' },
    ]);
  });

  it('tells what was paid from what was given back and from the postage of a claim', () => {
    const payments = [
      PAYMENT,
      { ...PAYMENT, amount: -100 },
      { ...PAYMENT, amount: -640, purpose: 'claim-postage' },
    ];
    const row = { ...shared, Method: 'transfer', Reference: 'RF1', 'Entered on': '2026-12-02' };
    expect(told([], payments)).toEqual([
      { ...row, Kind: 'payment', Received: '82.54' },
      { ...row, Kind: 'given back', Received: '-1.00' },
      { ...row, Kind: 'postage of a claim', Received: '-6.40' },
    ]);
  });

  it('goes by the day, papers of a day by number and before its payments, those in the order given', () => {
    const plain = { ...PAPER, breakdown: PAPER.breakdown.slice(0, 1), rounding: 0 };
    const rows = told(
      [plain, { ...plain, number: '2026-00001' }, { ...plain, number: '2026-00009', on: day('2026-11-02') }],
      [PAYMENT, { ...PAYMENT, amount: 1 }, { ...PAYMENT, on: day('2026-11-24') }],
    );
    expect(rows.map((row) => row['Number'] ?? row['Received'])).toEqual([
      '2026-00009',
      '82.54',
      '2026-00001',
      '2026-00002',
      '82.54',
      '0.01',
    ]);
  });

  it('is whole once its month is over', () => {
    expect(isMonthOver('2026-11', day('2026-11-30'))).toBe(false);
    expect(isMonthOver('2026-11', day('2026-12-01'))).toBe(true);
    expect(isMonthOver('2026-12', day('2027-01-01'))).toBe(true);
    expect(isMonthOver('2027-01', day('2026-12-31'))).toBe(false);
  });
});
