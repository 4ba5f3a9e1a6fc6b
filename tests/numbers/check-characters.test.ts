import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gs1Digit, isGs1 } from '@/lib/numbers/gs1';
import { checkCharacter, hasValidCheck, type Iso7064System } from '@/lib/numbers/iso7064';
import { isLuhn, luhnDigit } from '@/lib/numbers/luhn';

const digits = fc.string({ unit: fc.constantFrom(...'0123456789'), minLength: 2, maxLength: 20 });
const systems: Iso7064System[] = ['mod-11-2', 'mod-37-2', 'mod-97-10', 'mod-11-10', 'mod-27-26', 'mod-37-36'];

describe('what is no payload has no check character', () => {
  test.each(systems)('by the system %s of ISO 7064', (system) => {
    for (const payload of ['', 'a', 'é', '1 2', '*']) expect(checkCharacter(system, payload)).toBeNull();
    for (const text of ['', '0', 'A']) expect(hasValidCheck(system, text)).toBe(false);
  });

  test('by Luhn and by GS1', () => {
    for (const text of ['', '12a4', ' 1', '-1']) {
      expect(luhnDigit(text)).toBeNull();
      expect(gs1Digit(text)).toBeNull();
      expect(isLuhn(text)).toBe(false);
      expect(isGs1(text)).toBe(false);
    }
  });

  test('a supplementary character stands only at the end', () => {
    expect(hasValidCheck('mod-11-2', '079X')).toBe(true);
    expect(checkCharacter('mod-11-2', '079X')).toBeNull();
    expect(checkCharacter('mod-37-2', '000001*')).toBeNull();
  });
});

describe('single wrong digits', () => {
  const changed = (text: string, at: number, by: number) => {
    const i = at % text.length;
    return text.slice(0, i) + String((Number(text.charAt(i)) + by) % 10) + text.slice(i + 1);
  };

  test('none passes Luhn, GS1 or any system of ISO 7064', () => {
    fc.assert(
      fc.property(digits, fc.nat(), fc.integer({ min: 1, max: 9 }), (payload, at, by) => {
        const wrong = changed(payload, at, by);
        expect(isLuhn(wrong + luhnDigit(payload))).toBe(false);
        expect(isGs1(wrong + gs1Digit(payload))).toBe(false);
        for (const system of ['mod-11-2', 'mod-37-2', 'mod-97-10', 'mod-11-10', 'mod-37-36'] as const) {
          expect(hasValidCheck(system, wrong + checkCharacter(system, payload)), system).toBe(false);
        }
      }),
      { numRuns: 1000 },
    );
  });
});

// The hybrid systems let some swaps through, which is why a job number uses MOD 37-2: 72 of the 45,360
// swaps of neighbours pass MOD 37,36 (exact enumeration).
test('MOD 37,36 misses exactly 72 of 45,360 swaps of neighbours', () => {
  const alphabet = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ';
  let tried = 0;
  let missed = 0;
  // The state before the pair takes each of its 36 values once, by the payloads of one character.
  for (const before of alphabet) {
    for (const a of alphabet) {
      for (const b of alphabet) {
        if (a === b) continue;
        tried += 1;
        if (checkCharacter('mod-37-36', before + a + b) === checkCharacter('mod-37-36', before + b + a))
          missed += 1;
      }
    }
  }
  expect([tried, missed]).toEqual([45_360, 72]);
});
