import { describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { mayInvoice, saysTheSame, standingInvoices, supplyDay } from '@/lib/invoices/rules/standing';
import { invoiceState } from '@/lib/invoices/rules/state';
import { type Entry, statementRows } from '@/lib/invoices/rules/statement';

const line = {
  kind: 'labour',
  description: 'Socket replaced',
  amount: 7200,
  category: 'S',
  rateBps: 2000,
} as const;
const paper = (o: { id: string; correctsId?: string; payable: number }) => ({
  kind: o.correctsId ? 'credit-note' : 'invoice',
  correctsId: null,
  lines: [{ position: 0, amount: o.payable }],
  ...o,
});

describe('the invoices that stand', () => {
  it('are those of which something is not credited, each with its own credit notes', () => {
    const papers = [
      paper({ id: 'a', payable: 7200 }),
      paper({ id: 'a1', correctsId: 'a', payable: 7200 }),
      paper({ id: 'b', payable: 4800 }),
      paper({ id: 'b1', correctsId: 'b', payable: 4799 }),
    ];
    expect(standingInvoices(papers).map(({ invoice, credits }) => [invoice.id, credits.length])).toEqual([
      ['b', 1],
    ]);
  });

  it('say the same only with the same lines, tax and kind of price', () => {
    const priced = (o: object = {}, isGross = true) => ({ isGross, lines: [{ ...line, ...o }] });
    expect(saysTheSame(priced(), priced())).toBe(true);
    for (const other of [
      { description: 'Board cleaned' },
      { amount: 7201 },
      { category: 'Z' as const },
      { rateBps: 500 },
    ])
      expect(saysTheSame(priced(), priced(other))).toBe(false);
    expect(saysTheSame(priced(), priced({}, false))).toBe(false);
  });
});

describe('an invoice can be issued by hand', () => {
  const job = (o: { gross?: number; stage?: string; invoices?: [string, number][] } = {}) => ({
    stage: o.stage ?? 'on-bench',
    quotes: [{ revisions: [{ state: 'accepted', grossMinor: o.gross ?? 7200 }] }],
    invoices: (o.invoices ?? []).map(([kind, payableMinor]) => ({ kind, payableMinor })),
    payments: [],
  });

  it.each([
    ['where a price is agreed and nothing invoiced', job(), true],
    ['not where it is free', job({ gross: 0 }), false],
    ['not where it was cancelled', job({ stage: 'cancelled' }), false],
    ['not where one stands', job({ invoices: [['invoice', 7200]] }), false],
    [
      'not where a part was credited',
      job({
        invoices: [
          ['invoice', 7200],
          ['credit-note', 1000],
        ],
      }),
      false,
    ],
    [
      'again where all was credited',
      job({
        invoices: [
          ['invoice', 7200],
          ['credit-note', 7200],
        ],
      }),
      true,
    ],
  ])('%s', (_, given, expected) => {
    expect(mayInvoice(given)).toBe(expected);
  });
});

// VAT Directive 2006/112/EC Art. 226(7): the day of supply, where it can be determined and differs from the day of issue.
describe('the day of supply', () => {
  // 23:30 UTC in summer is the next day in London.
  const readyAt = new Date('2026-07-01T23:30:00Z');

  it('is the day the work was done, in the workshop’s zone', () => {
    expect(supplyDay({ stage: 'sent-back', readyAt }, 'Europe/London')).toBe('2026-07-02');
    expect(supplyDay({ stage: 'sent-back', readyAt }, 'UTC')).toBe('2026-07-01');
  });

  it('is not named before the work is done', () => {
    expect(supplyDay({ stage: 'on-bench', readyAt }, 'UTC')).toBeNull();
    expect(supplyDay({ stage: 'ready', readyAt: null }, 'UTC')).toBeNull();
  });
});

it.each([
  [7200, 1, 'open'],
  [7200, 0, 'paid'],
  [7200, -1, 'paid'],
  [1, 0, 'paid'],
  [0, 1, 'credited'],
  [0, 0, 'credited'],
] as const)('an invoice with %i left to credit and %i owed is %s', (leftToCredit, owed, state) => {
  expect(invoiceState({ leftToCredit, owed })).toBe(state);
});

it('an account tells of one day in the order of invoice, credit note, payment and money given back', () => {
  const entry = (kind: Entry['kind'], amount: number, over: Partial<Entry> = {}): Entry => ({
    ...{ on: day('2026-12-01'), kind, what: kind, job: 'J1', amount },
    ...over,
  });
  const rows = statementRows([
    entry('given-back', 1000),
    entry('payment', -7200),
    entry('invoice', 2400, { on: day('2026-12-02'), what: '2026-00003' }),
    entry('credit-note', -1000),
    entry('invoice', 4800, { what: '2026-00002' }),
    entry('invoice', 7200, { what: '2026-00001', job: 'J2' }),
  ]);
  expect(rows.map(({ what, balance }) => [what, balance])).toEqual([
    ['2026-00001', 7200],
    ['2026-00002', 12_000],
    ['credit-note', 11_000],
    ['payment', 3800],
    ['given-back', 4800],
    ['2026-00003', 7200],
  ]);
});
