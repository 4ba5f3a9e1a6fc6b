import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isNearKey, lookAlikeKey, oneEditKeys } from '@/lib/numbers/near-serial';
import { compareSerials, foldSerial } from '@/lib/numbers/serial';

const key = fc.string({
  unit: fc.constantFrom(...'0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ'),
  minLength: 4,
  maxLength: 12,
});
const letter = fc.constantFrom(...'0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ');

/** One edit drawn at random. */
const edited = fc
  .tuple(key, fc.nat(), letter, fc.constantFrom('replace', 'drop', 'add', 'swap'))
  .map(([text, at, other, kind]) => {
    const i = at % (text.length - 1);
    const edit = {
      replace: text.slice(0, i) + other + text.slice(i + 1),
      drop: text.slice(0, i) + text.slice(i + 1),
      add: text.slice(0, i) + other + text.slice(i),
      swap: text.slice(0, i) + text.charAt(i + 1) + text.charAt(i) + text.slice(i + 2),
    }[kind];
    return { text, edit };
  });

describe('keys one edit away', () => {
  test('are all named', () => {
    fc.assert(
      fc.property(edited, ({ text, edit }) => {
        expect(oneEditKeys(text)).toContain(edit);
      }),
      { numRuns: 3000 },
    );
  });

  test('are each a likely misread, or the key itself', () => {
    fc.assert(
      fc.property(key, (text) => {
        for (const near of oneEditKeys(text))
          expect(compareSerials(text, near)).toBe(near === text ? 'same' : 'likely-misread');
      }),
      { numRuns: 20 },
    );
  });

  test('grow with the length of the key by the number of characters there are', () => {
    // For n characters of 36: 1 key, n dropped, 35 n replaced, at most 36 (n + 1) added and n - 1 swapped.
    expect(oneEditKeys('HW210480K').length).toBeLessThanOrEqual(1 + 9 + 35 * 9 + 36 * 10 + 8);
    // With one character in the place of the edit they are patterns: _W210480K, HW21_480K and so on.
    expect(oneEditKeys('HW210480K', '_').length).toBeLessThanOrEqual(1 + 9 + 9 + 10 + 8);
  });
});

describe('the look-alike key', () => {
  test.each([
    ['qa-0O31 z', '0A00312'],
    ['HW2-1O480-K', 'HW210480K'],
    ['OQDILJZSGB', '0001112568'],
  ])('of %s is %s', (text, expected) => {
    expect(lookAlikeKey(text)).toBe(expected);
  });

  test('is the same exactly when two keys of a length differ by look-alikes alone', () => {
    const few = fc.string({ unit: fc.constantFrom(...'0OQ1I2Z7A'), minLength: 5, maxLength: 5 });
    fc.assert(
      fc.property(few, few, (a, b) => {
        const isOneEdit = oneEditKeys(a).includes(b);
        if (lookAlikeKey(a) === lookAlikeKey(b)) expect(compareSerials(a, b)).not.toBe('different');
        else if (!isOneEdit) expect(compareSerials(a, b)).toBe('different');
      }),
      { numRuns: 5000 },
    );
  });

  test('of a key is a key', () => {
    fc.assert(
      fc.property(key, (text) => {
        expect(foldSerial(lookAlikeKey(text))).toBe(lookAlikeKey(text));
      }),
    );
  });
});

test.each([
  ['', false],
  ['HW2', false],
  ['HW21', true],
  ['H'.repeat(40), true],
  ['H'.repeat(41), false],
])('%s is worth a search: %s', (text, expected) => {
  expect(isNearKey(text)).toBe(expected);
});
