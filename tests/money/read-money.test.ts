import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decimalText, formatMoney } from '@/lib/money/amount';
import { currencyCodes, symbolOf } from '@/lib/money/currency';
import { readMoney } from '@/lib/money/read-money';

describe('reading a typed amount', () => {
  test.each([
    ['14', 'GBP', 1400],
    ['14.5', 'GBP', 1450],
    ['14,50', 'GBP', 1450],
    ['14.', 'GBP', 1400],
    ['.5', 'GBP', 50],
    [' £14.50 ', 'GBP', 1450],
    ['14.50 gbp', 'GBP', 1450],
    ['GBP14.50', 'GBP', 1450],
    ['-14.50', 'GBP', -1450],
    ['-£14.50', 'GBP', -1450],
    ['£-14.50', 'GBP', -1450],
    ['\u221214.50', 'GBP', -1450],
    ['-0', 'GBP', 0],
    ['1,234.50', 'GBP', 123450],
    ['1.234,50', 'EUR', 123450],
    ['1 234,50 €', 'EUR', 123450],
    ['1\u202F234,50', 'EUR', 123450],
    ["1'234.50", 'CHF', 123450],
    ['1\u2019234\u2019567.50', 'CHF', 123456750],
    ['1,234,567', 'GBP', 123456700],
    ['\uFF11\uFF12.\uFF15\uFF10', 'GBP', 1250],
    ['12,50 zł', 'PLN', 1250],
    ['1,450', 'JPY', 1450],
    ['10.500', 'JPY', 10500],
    ['0.007', 'KWD', 7],
    ['0012.50', 'GBP', 1250],
  ])("'%s' in %s is %i", (text, currency, minor) => {
    expect(readMoney(text, currency)).toEqual({ ok: true, minor });
  });

  test.each([
    ['1,234', 'EUR', 'decimals'],
    ['1.234', 'EUR', 'decimals'],
    ['14.505', 'GBP', 'decimals'],
    ['10.0', 'JPY', 'decimals'],
    ['0.500', 'JPY', 'decimals'],
    ['1,234', 'KWD', 'format'],
    ['', 'GBP', 'format'],
    ['-', 'GBP', 'format'],
    ['.', 'GBP', 'format'],
    ['free', 'GBP', 'format'],
    ['12 50', 'GBP', 'format'],
    ['1,23,456', 'GBP', 'format'],
    ['1234,567.50', 'GBP', 'format'],
    ['1,234,56', 'GBP', 'format'],
    ['1,234.567.8', 'GBP', 'format'],
    ['1.234.50', 'GBP', 'format'],
    ['1e3', 'GBP', 'format'],
    ['0x10', 'GBP', 'format'],
    ['--5', 'GBP', 'format'],
    ['€14.50', 'GBP', 'format'],
    ['14.50 EUR', 'GBP', 'format'],
    ['90071992547409.92', 'GBP', 'range'],
    ['1'.repeat(400), 'GBP', 'range'],
  ])("'%s' in %s is refused for its %s", (text, currency, reason) => {
    expect(readMoney(text, currency)).toEqual({ ok: false, reason });
  });

  test('an unknown currency is a fault of the program, not of the person', () => {
    expect(() => readMoney('1', 'ABC')).toThrow(RangeError);
  });

  const amount = fc.integer({ min: -(10 ** 12), max: 10 ** 12 });
  const currency = fc.constantFrom(...currencyCodes());

  test('every amount is read back from its plain decimal', () => {
    fc.assert(
      fc.property(amount, currency, (minor, code) => {
        expect(readMoney(decimalText(minor, code), code)).toEqual({ ok: true, minor });
      }),
      { numRuns: 2000 },
    );
  });

  test('and from the text that we show where the currency is at home', () => {
    const shown = fc.constantFrom(
      ['GBP', 'en-GB'],
      ['EUR', 'en-IE'],
      ['EUR', 'de-DE'],
      ['EUR', 'fr-FR'],
      ['PLN', 'pl-PL'],
      ['CHF', 'de-CH'],
      ['SEK', 'sv-SE'],
      ['USD', 'en-US'],
      ['JPY', 'ja-JP'],
    );
    fc.assert(
      fc.property(amount, shown, (minor, [code = '', locale = '']) => {
        expect(readMoney(formatMoney(minor, code, locale), code)).toEqual({ ok: true, minor });
      }),
      { numRuns: 2000 },
    );
  });

  const anyCharacter = fc.integer({ min: 0, max: 0xffff }).map((code) => String.fromCharCode(code));
  const likely = fc.constantFrom(..."0123456789.,-' £€\u00A0", 'GBP', 'kr');
  const typed = fc.string({ unit: fc.oneof({ weight: 9, arbitrary: likely }, anyCharacter), maxLength: 12 });

  test('no text makes it throw', () => {
    fc.assert(
      fc.property(typed, currency, (text, code) => {
        const reading = readMoney(text, code);
        if (reading.ok) expect(Number.isSafeInteger(reading.minor)).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });
});

test('signs of currencies are the short ones', () => {
  expect(['GBP', 'EUR', 'PLN', 'KWD'].map(symbolOf)).toEqual(['£', '€', 'zł', 'KWD']);
  expect(() => symbolOf('ABC')).toThrow(RangeError);
});
