import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkS10, s10Digit } from '@/lib/numbers/s10';

describe('a carrier reference', () => {
  test('is read in any case and spacing', () => {
    expect(checkS10(' rr 47312482 9 gb ')).toEqual({ form: 's10', valid: true });
    expect(checkS10('RR-473124829-GB')).toEqual({ form: 's10', valid: true });
  });

  test.each(['', '473124829', 'RR47312482GB', 'RR4731248299GB', '1Z999AA10123456784', 'RR473124829G8'])(
    "of another form is left unchecked: '%s'",
    (text) => {
      expect(checkS10(text)).toEqual({ form: 'other' });
    },
  );

  test('of a reserved service is refused for its service', () => {
    for (const service of ['JA', 'KA', 'SA', 'TA', 'WA']) {
      expect(checkS10(`${service}473124829GB`)).toEqual({ form: 's10', valid: false, reason: 'service' });
    }
  });

  test('names a wrong digit before a wrong country', () => {
    expect(checkS10('RR473124828XX')).toEqual({ form: 's10', valid: false, reason: 'check-digit' });
  });

  // Eleven remainders share ten digits: 0 and 6 both give 5, so only a reference that ends in 5 may hide a wrong digit.
  test('with one wrong digit keeps its check digit only where that is 5', () => {
    const digits = fc.string({ unit: fc.constantFrom(...'0123456789'), minLength: 8, maxLength: 8 });
    fc.assert(
      fc.property(digits, fc.nat({ max: 7 }), fc.integer({ min: 1, max: 9 }), (serial, i, by) => {
        const wrong = serial.slice(0, i) + ((Number(serial.charAt(i)) + by) % 10) + serial.slice(i + 1);
        const digit = s10Digit(serial);
        if (digit !== 5) expect(s10Digit(wrong)).not.toBe(digit);
      }),
      { numRuns: 2000 },
    );
  });

  test('has no digit when its serial is not eight digits', () => {
    for (const serial of ['', '1234567', '123456789', '1234567a']) expect(s10Digit(serial)).toBeNull();
  });
});
