import { describe, expect, test } from 'vitest';
import { formatMoney, readMoney } from '@/lib/money/amount';
import { currencyCodes, exponentOf, isCurrency } from '@/lib/money/currency';

describe('decimals of currencies (ISO 4217, as in npm currency-codes 2.2.0)', () => {
  test.each([
    [0, 'JPY KRW CLP ISK VND UGX PYG XOF XAF RWF'],
    [2, 'EUR GBP USD CHF PLN SEK NOK DKK CZK HUF MGA MRU'],
    [3, 'KWD BHD OMR TND JOD IQD LYD'],
    [4, 'CLF UYW'],
  ])('%i for %s', (exponent, codes) => {
    for (const code of codes.split(' ')) expect(exponentOf(code)).toBe(exponent);
  });

  test('what has no minor unit, no longer exists or never did is refused', () => {
    for (const code of ['XAU', 'XDR', 'XXX', 'DEM', 'eur', 'EURO', '']) {
      expect(isCurrency(code)).toBe(false);
      expect(() => exponentOf(code)).toThrow(RangeError);
    }
  });

  // CLDR in Node's Intl names every code of ours, which catches a mistyped one.
  test('every code is a currency known to CLDR', () => {
    const names = new Intl.DisplayNames('en', { type: 'currency', fallback: 'none' });
    const newest = ['XCG']; // in ISO 4217 since 2025, later than the CLDR of older Node versions
    expect(currencyCodes().filter((code) => names.of(code) === undefined && !newest.includes(code))).toEqual(
      [],
    );
  });

  // CLDR shows some currencies with fewer decimals than ISO 4217 gives them; this is why Intl is no source for them.
  test('Intl never shows more decimals than the table, and the table decides what is shown', () => {
    for (const currency of currencyCodes()) {
      const intl = new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions();
      expect(intl.maximumFractionDigits ?? 0).toBeLessThanOrEqual(exponentOf(currency));
    }
    expect(formatMoney(123456, 'HUF', 'en')).toMatch(/1,234\.56/);
    expect(formatMoney(1234567, 'IQD', 'en')).toMatch(/1,234\.567/);
  });
});

describe('amounts in minor units', () => {
  test('one yen is 1, 1.234 dinars are 1234', () => {
    expect(readMoney('1', 'JPY')).toEqual({ ok: true, minor: 1 });
    expect(readMoney('1.234', 'KWD')).toEqual({ ok: true, minor: 1234 });
  });

  test('half a yen and a tenth of a fils are no amounts', () => {
    expect(readMoney('10.5', 'JPY')).toEqual({ ok: false, reason: 'decimals' });
    expect(readMoney('1.2345', 'KWD')).toEqual({ ok: false, reason: 'decimals' });
  });

  // Binary floating point: 1.15 * 100 is 114.99999999999999 and (1.005).toFixed(2) is "1.00".
  test('1.15 is 115 cents exactly', () => {
    expect(1.15 * 100).not.toBe(115);
    expect(readMoney('1.15', 'EUR')).toEqual({ ok: true, minor: 115 });
  });
});
