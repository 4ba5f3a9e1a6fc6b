import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decimalText, roundedShare } from '@/lib/money/amount';
import { type MoneyLine, totals } from '@/lib/money/tax';

const amount = fc.integer({ min: -5_000_000, max: 5_000_000 });
const rate = fc.constantFrom(0, 1, 500, 550, 700, 1900, 2000, 2100, 2500, 2700, 10_000);
const line: fc.Arbitrary<MoneyLine> = fc.oneof(
  fc.record({ amount, category: fc.constant('S' as const), rateBps: rate }),
  fc.record({
    amount,
    category: fc.constantFrom('Z' as const, 'E' as const, 'O' as const),
    rateBps: fc.constant(0),
  }),
);
const lines = fc.array(line, { maxLength: 30 });
const mode = fc.constantFrom('net' as const, 'gross' as const);
const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);

describe('for every set of lines', () => {
  // Amounts are whole minor units, so a currency of 0, 2 or 3 decimals differs only in how the sums are written.
  test.each(['JPY', 'EUR', 'KWD'])(
    'net and tax make the gross, to the last %s unit as written',
    (currency) => {
      const units = (minor: number) => BigInt(decimalText(minor, currency).replace('.', ''));
      fc.assert(
        fc.property(lines, mode, (set, m) => {
          const sums = totals(set, m);
          expect(units(sums.net) + units(sums.tax)).toBe(units(sums.gross));
        }),
        { numRuns: 1000 },
      );
    },
  );

  test('the breakdown adds up to the sums (BR-CO-14, BR-S-08), each category and rate once', () => {
    fc.assert(
      fc.property(lines, mode, (set, m) => {
        const { breakdown, net, tax } = totals(set, m);
        expect(sum(breakdown.map((part) => part.base))).toBe(net);
        expect(sum(breakdown.map((part) => part.tax))).toBe(tax);
        const keys = breakdown.map((part) => `${part.category}${part.rateBps}`);
        expect(new Set(keys)).toEqual(new Set(set.map((l) => `${l.category}${l.rateBps}`)));
        expect(keys).toHaveLength(new Set(keys).size);
      }),
      { numRuns: 1000 },
    );
  });

  test('from net amounts: the net is their sum (BR-CO-10), and each tax is the rounded share of its base (BR-CO-17)', () => {
    fc.assert(
      fc.property(lines, (set) => {
        const { net, breakdown } = totals(set, 'net');
        expect(net).toBe(sum(set.map((l) => l.amount)));
        for (const { base, rateBps, tax } of breakdown) {
          expect(Math.abs(tax * 10_000 - base * rateBps)).toBeLessThanOrEqual(5_000);
        }
      }),
      { numRuns: 1000 },
    );
  });

  test('from gross amounts: the gross is their sum, no cent gained or lost', () => {
    fc.assert(
      fc.property(lines, (set) => {
        expect(totals(set, 'gross').gross).toBe(sum(set.map((l) => l.amount)));
      }),
      { numRuns: 1000 },
    );
  });

  test('the order of the lines changes nothing', () => {
    fc.assert(
      fc.property(lines, mode, (set, m) => {
        expect(totals(set.toReversed(), m)).toEqual(totals(set, m));
      }),
    );
  });

  test('the credit note of an invoice cancels it exactly', () => {
    fc.assert(
      fc.property(lines, mode, (set, m) => {
        const bill = totals(set, m);
        const credit = totals(
          set.map((l) => ({ ...l, amount: 0 - l.amount })),
          m,
        );
        expect(credit.net + bill.net).toBe(0);
        expect(credit.tax + bill.tax).toBe(0);
        expect(credit.gross + bill.gross).toBe(0);
      }),
    );
  });
});

describe('prices with tax', () => {
  test('a price made from a net amount gives that net amount back', () => {
    fc.assert(
      fc.property(amount, rate, (base, rateBps) => {
        const { gross } = totals([{ amount: base, category: 'S', rateBps }], 'net');
        expect(totals([{ amount: gross, category: 'S', rateBps }], 'gross').net).toBe(base);
      }),
      { numRuns: 2000 },
    );
  });

  test('where no net amount leads to a price exactly, the tax is off the rule by one unit at most', () => {
    const gaps = new Set<number>();
    for (let gross = 1; gross <= 2000; gross += 1) {
      const [part] = totals([{ amount: gross, category: 'S', rateBps: 2000 }], 'gross').breakdown;
      gaps.add((part?.tax ?? 0) - roundedShare(part?.base ?? 0, 2000, 10_000));
    }
    expect([...gaps].every((gap) => Math.abs(gap) <= 1)).toBe(true);
  });

  test('59.00 with 20 % inside are 49.17 and 9.83', () => {
    expect(totals([{ amount: 5900, category: 'S', rateBps: 2000 }], 'gross')).toEqual({
      net: 4917,
      tax: 983,
      gross: 5900,
      breakdown: [{ category: 'S', rateBps: 2000, base: 4917, tax: 983 }],
    });
  });
});

describe('what is refused or nothing', () => {
  test('no lines are nothing', () => {
    expect(totals([], 'net')).toEqual({ net: 0, tax: 0, gross: 0, breakdown: [] });
  });

  test('a warranty job with its full discount is payable 0, and keeps its line in the breakdown', () => {
    const sums = totals(
      [
        { amount: 7200, category: 'S', rateBps: 2000 },
        { amount: -7200, category: 'S', rateBps: 2000 },
      ],
      'net',
    );
    expect(sums).toEqual({
      net: 0,
      tax: 0,
      gross: 0,
      breakdown: [{ category: 'S', rateBps: 2000, base: 0, tax: 0 }],
    });
  });

  test('standard rates come before zero, exempt and outside, the highest first', () => {
    const set: MoneyLine[] = [
      { amount: 1, category: 'O', rateBps: 0 },
      { amount: 1, category: 'S', rateBps: 500 },
      { amount: 1, category: 'E', rateBps: 0 },
      { amount: 1, category: 'S', rateBps: 2000 },
      { amount: 1, category: 'Z', rateBps: 0 },
    ];
    const order = totals(set, 'net').breakdown.map((part) => part.category + part.rateBps);
    expect(order).toEqual(['S2000', 'S500', 'Z0', 'E0', 'O0']);
  });

  test.each<[string, MoneyLine]>([
    ['a rate on a zero-rated line (BR-Z-05)', { amount: 1, category: 'Z', rateBps: 2000 }],
    ['a rate on an exempt line (BR-E-05)', { amount: 1, category: 'E', rateBps: 1 }],
    ['a negative rate', { amount: 1, category: 'S', rateBps: -1 }],
    ['a broken rate', { amount: 1, category: 'S', rateBps: 17.5 }],
    ['a fraction of a cent', { amount: 0.5, category: 'S', rateBps: 2000 }],
    ['an amount past the safe integers', { amount: 2 ** 53, category: 'S', rateBps: 0 }],
  ])('%s', (_name, bad) => {
    expect(() => totals([bad], 'net')).toThrow(RangeError);
    expect(() => totals([bad], 'gross')).toThrow(RangeError);
  });

  test('a sum past the safe integers', () => {
    const half = { amount: 2 ** 52, category: 'S', rateBps: 0 } as const;
    expect(() => totals([half, half], 'net')).toThrow(RangeError);
  });
});
