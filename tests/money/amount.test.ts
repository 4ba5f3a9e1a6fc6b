import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decimalText, formatMoney, roundedShare, safeSum } from '@/lib/money/amount';
import { currencyCodes } from '@/lib/money/currency';

const plain = (text: string) => text.replace(/[\u00A0\u202F]/g, ' ');

describe('showing an amount', () => {
  test.each([
    [123456, 'GBP', 'en-GB', '£1,234.56'],
    [-1450, 'GBP', 'en-GB', '-£14.50'],
    [0, 'GBP', 'en-GB', '£0.00'],
    [5, 'EUR', 'en-GB', '€0.05'],
    [123456, 'EUR', 'de-DE', '1.234,56 €'],
    [1450, 'JPY', 'en-GB', 'JP¥1,450'],
    [1234, 'KWD', 'en-GB', 'KWD 1.234'],
    [Number.MAX_SAFE_INTEGER, 'EUR', 'en-GB', '€90,071,992,547,409.91'],
  ])('%i %s in %s is %s', (minor, currency, locale, text) => {
    expect(plain(formatMoney(minor, currency, locale))).toBe(text);
  });

  test('minus nothing is nothing', () => {
    expect(formatMoney(-0, 'GBP', 'en-GB')).toBe('£0.00');
  });

  test('anything but a safe whole number is refused', () => {
    for (const minor of [0.5, Number.NaN, Number.POSITIVE_INFINITY, 2 ** 53]) {
      expect(() => formatMoney(minor, 'GBP', 'en-GB')).toThrow(RangeError);
    }
    expect(() => formatMoney(1, 'ABC', 'en-GB')).toThrow(RangeError);
  });

  test.each([
    [-1450, 'EUR', '-14.50'],
    [7, 'EUR', '0.07'],
    [1450, 'JPY', '1450'],
    [7, 'KWD', '0.007'],
    [-7, 'CLF', '-0.0007'],
  ])('%i %s as a plain decimal is %s', (minor, currency, text) => {
    expect(decimalText(minor, currency)).toBe(text);
  });

  test('the plain decimal of any amount is its exact value', () => {
    const amount = fc.maxSafeInteger();
    fc.assert(
      fc.property(amount, fc.constantFrom(...currencyCodes()), (minor, currency) => {
        expect(BigInt(decimalText(minor, currency).replace('.', ''))).toBe(BigInt(minor));
      }),
    );
  });
});

describe('shares of an amount', () => {
  test('ninety minutes at 48.00 an hour are 72.00', () => {
    expect(roundedShare(4800, 90, 60)).toBe(7200);
  });

  test.each([
    [1, 1, 2, 1],
    [-1, 1, 2, -1],
    [1, -1, 2, -1],
    [5, 1, 10, 1],
    [4, 1, 10, 0],
    [-4, 1, 10, 0],
    [3, 5, 10, 2],
  ])('%i x %i / %i is %i', (amount, numerator, denominator, share) => {
    expect(roundedShare(amount, numerator, denominator)).toBe(share);
  });

  test('never leaves more than half a unit, also where the product passes the safe integers', () => {
    const amount = fc.integer({ min: -(10 ** 12), max: 10 ** 12 });
    fc.assert(
      fc.property(amount, fc.nat({ max: 100_000 }), fc.integer({ min: 1, max: 100_000 }), (a, n, d) => {
        fc.pre((BigInt(Math.abs(a)) * BigInt(n)) / BigInt(d) < 2n ** 53n);
        const error = 2n * (BigInt(roundedShare(a, n, d)) * BigInt(d) - BigInt(a) * BigInt(n));
        expect(error <= BigInt(d) && error >= -BigInt(d)).toBe(true);
        expect(roundedShare(-a, n, d)).toBe(0 - roundedShare(a, n, d));
      }),
      { numRuns: 2000 },
    );
  });

  test('fractions, no denominator and unsafe results are refused', () => {
    expect(() => roundedShare(0.5, 1, 2)).toThrow(RangeError);
    expect(() => roundedShare(1, 1.5, 2)).toThrow(RangeError);
    expect(() => roundedShare(1, 1, 0)).toThrow(RangeError);
    expect(() => roundedShare(1, 1, -2)).toThrow(RangeError);
    expect(() => roundedShare(Number.MAX_SAFE_INTEGER, 2, 1)).toThrow(RangeError);
  });

  test('a sum past the safe integers is refused instead of drifting', () => {
    expect(safeSum([])).toBe(0);
    expect(safeSum([Number.MAX_SAFE_INTEGER, -1])).toBe(Number.MAX_SAFE_INTEGER - 1);
    expect(() => safeSum([Number.MAX_SAFE_INTEGER, 1])).toThrow(RangeError);
    expect(() => safeSum([0.1, 0.2])).toThrow(RangeError);
  });
});
