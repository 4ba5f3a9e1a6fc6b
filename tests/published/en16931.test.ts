import { describe, expect, test } from 'vitest';
import { roundedShare } from '@/lib/money/amount';
import { type MoneyLine, type TaxBreakdown, type TaxCategory, totals } from '@/lib/money/tax';

// Rules BR-CO-10, 13, 14, 15, 16 and 17, BR-S-08 and BR-S-09, BR-Z/E-08: eInvoicing-EN16931, ubl/schematron/abstract/EN16931-model.sch.
// Figures: the example invoices of that repository ("EN") and of peppol-bis-invoice-3 ("Peppol"), in cents. A document
// allowance is a line with a negative amount here, a document charge one with a positive amount.

const line = (amount: number, percent: number, category: TaxCategory = 'S'): MoneyLine => ({
  amount,
  category,
  rateBps: percent * 100,
});
const part = (base: number, percent: number, tax: number, category: TaxCategory = 'S'): TaxBreakdown => ({
  category,
  rateBps: percent * 100,
  base,
  tax,
});

type Example = {
  name: string;
  lines: MoneyLine[];
  breakdown: TaxBreakdown[];
  net: number;
  gross: number;
  paid: number;
  payable: number;
};

const examples: Example[] = [
  {
    name: 'Peppol base-example, EUR',
    lines: [line(280000, 25), line(-150000, 25), line(2500, 25)],
    breakdown: [part(132500, 25, 33125)],
    net: 132500,
    gross: 165625,
    paid: 0,
    payable: 165625,
  },
  {
    name: 'Peppol Vat-category-S',
    lines: [line(400000, 25), line(200000, 15), line(90000, 25), line(-10000, 25), line(20000, 25)],
    breakdown: [part(500000, 25, 125000), part(200000, 15, 30000)],
    net: 700000,
    gross: 855000,
    paid: 0,
    payable: 855000,
  },
  {
    name: 'Peppol Allowance-example',
    lines: [line(400000, 25), line(100000, 0, 'E'), line(90000, 25), line(-20000, 25), line(20000, 25)],
    breakdown: [part(490000, 25, 122500), part(100000, 0, 0, 'E')],
    net: 590000,
    gross: 712500,
    paid: 100000,
    payable: 612500,
  },
  {
    name: 'EN example2, NOK: 365.125 is published as 365.13, so a half goes up',
    lines: [line(146050, 25), line(-10000, 25), line(10000, 25), line(100, 15), line(-2500, 0, 'E')],
    breakdown: [part(146050, 25, 36513), part(100, 15, 15), part(-2500, 0, 0, 'E')],
    net: 143650,
    // The file's payable amount is its gross less 1000.00 paid.
    gross: 180178,
    paid: 100000,
    payable: 80178,
  },
  {
    name: 'EN example8, EUR',
    lines: [14080, 1616, 16764, 8874, 3675, 5650, 8334, 19031, 6421, 6446].map((amount) => line(amount, 21)),
    breakdown: [part(90891, 21, 19087)],
    net: 90891,
    gross: 109978,
    paid: 0,
    payable: 109978,
  },
  {
    name: 'EN example1, EUR',
    lines: [line(18323, 6), line(4637, 21)],
    breakdown: [part(4637, 21, 974), part(18323, 6, 1099)],
    net: 22960,
    gross: 25033,
    paid: 0,
    payable: 25033,
  },
  {
    name: 'EN example5, DKK',
    lines: [line(100000, 25), line(50000, 25), line(250000, 12), line(-15000, 25), line(15000, 25)],
    breakdown: [part(150000, 25, 37500), part(250000, 12, 30000)],
    net: 400000,
    gross: 467500,
    paid: 233750,
    payable: 233750,
  },
  {
    name: 'EN example9, EUR',
    lines: [line(14700, 21)],
    breakdown: [part(14700, 21, 3087)],
    net: 14700,
    gross: 17787,
    paid: 0,
    payable: 17787,
  },
  {
    name: 'EN sample-discount-price',
    lines: [line(1212, 25)],
    breakdown: [part(1212, 25, 303)],
    net: 1212,
    gross: 1515,
    paid: 0,
    payable: 1515,
  },
  {
    name: 'EN creditnote1',
    lines: [line(10011, 0, 'E')],
    breakdown: [part(10011, 0, 0, 'E')],
    net: 10011,
    gross: 10011,
    paid: 0,
    payable: 10011,
  },
  {
    name: 'Peppol base-negative-inv-correction: a negative base rounds like a positive one',
    lines: [line(-132500, 25)],
    breakdown: [part(-132500, 25, -33125)],
    net: -132500,
    gross: -165625,
    paid: 0,
    payable: -165625,
  },
];

describe('sums of the example invoices', () => {
  test.each(examples)('$name', ({ lines, breakdown, net, gross, paid, payable }) => {
    const sums = totals(lines, 'net');
    expect(sums.breakdown).toEqual(breakdown);
    expect(sums.net).toBe(net);
    expect(sums.gross).toBe(gross);
    expect(sums.tax).toBe(gross - net);
    expect(sums.gross - paid).toBe(payable);
  });

  test.each(examples)('$name, from its gross amounts', ({ breakdown, net, gross }) => {
    const grossLines = breakdown.map(({ category, rateBps, base, tax }) => ({
      category,
      rateBps,
      amount: base + tax,
    }));
    const sums = totals(grossLines, 'gross');
    expect(sums).toEqual({ net, tax: gross - net, gross, breakdown });
  });
});

describe('tax is rounded once per category, never per line', () => {
  // Computed; the notes on rounding are in peppol-bis-invoice-3, guide/transaction-spec/calculations.
  test('five lines of 0.10 at 21 % carry 0.11, where rounding each would give 0.10', () => {
    expect(
      totals(
        Array.from({ length: 5 }, () => line(10, 21)),
        'net',
      ).tax,
    ).toBe(11);
    expect(5 * roundedShare(10, 2100, 10_000)).toBe(10);
  });

  test('ten lines of 1.02 at 25 % carry 2.55, where rounding each would give 2.60', () => {
    expect(
      totals(
        Array.from({ length: 10 }, () => line(102, 25)),
        'net',
      ).tax,
    ).toBe(255);
    expect(10 * roundedShare(102, 2500, 10_000)).toBe(260);
  });

  // Places where binary fractions go wrong: (0.5 * 0.21).toFixed(2) is "0.10" and Math.round(-2.5) is -2.
  test('halves go away from zero on both sides', () => {
    expect((0.5 * 0.21).toFixed(2)).toBe('0.10');
    expect(roundedShare(50, 2100, 10_000)).toBe(11);
    expect(roundedShare(-50, 2100, 10_000)).toBe(-11);
  });
});
