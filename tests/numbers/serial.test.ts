import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  checkSerial,
  compareSerials,
  foldSerial,
  isSerialPattern,
  type SerialRule,
} from '@/lib/numbers/serial';

const character = fc.constantFrom(...'0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ');
const serial = fc.string({ unit: character, minLength: 4, maxLength: 16 });

const anyCharacter = fc.integer({ min: 0, max: 0xffff }).map((code) => String.fromCharCode(code));

describe('the key of a serial', () => {
  test.each([
    ['qa-0031 b', 'QA0031B'],
    ['S/N: 77.120/4', 'SN771204'],
    ['\uFF31\uFF21\u20130031', 'QA0031'],
    [' - ', ''],
  ])("'%s' is kept as '%s'", (typed, key) => {
    expect(foldSerial(typed)).toBe(key);
  });

  test('folding a key changes nothing', () => {
    fc.assert(
      fc.property(fc.string({ unit: anyCharacter }), (text) => {
        expect(foldSerial(foldSerial(text))).toBe(foldSerial(text));
      }),
    );
  });
});

describe('comparing serials', () => {
  test.each([
    ['the same with other separators and case', 'QA-0031-B', 'qa 0031 b', 'same'],
    ['O for 0', 'QA0O31', 'QA0031', 'likely-misread'],
    ['Q and D for 0', '70-0D1', '7Q-001', 'likely-misread'],
    ['I, L and J for 1', 'A1111', 'A1ILJ', 'likely-misread'],
    ['Z for 2, S for 5, G for 6, B for 8', '2568', 'ZSGB', 'likely-misread'],
    ['one character wrong', 'QA0031', 'QA0037', 'likely-misread'],
    ['one missing', 'QA0031', 'QA031', 'likely-misread'],
    ['one added', 'QA0031', 'QA00311', 'likely-misread'],
    ['two neighbours swapped', 'QA0413', 'QA0431', 'likely-misread'],
    ['two characters wrong', 'QA0031', 'QA9937', 'different'],
    ['two swapped over one between', 'QA4731', 'QA4137', 'different'],
    ['two missing', 'QA0031', 'QA31', 'different'],
    ['two added', 'QA0031', 'QA003144', 'different'],
    ['a look-alike and another fault', 'QA0O31', 'QA0037', 'different'],
    ['a look-alike and a different length', 'QA0O314', 'QA0031', 'different'],
    ['nothing typed', '', 'QA0031', 'different'],
    ['nothing typed, and one character', '', 'A', 'different'],
    ['nothing on either side', '-', ' ', 'different'],
  ] as const)('%s', (_name, a, b, expected) => {
    expect(compareSerials(a, b)).toBe(expected);
    expect(compareSerials(b, a)).toBe(expected);
  });

  test('a serial is the same as itself, however it is written', () => {
    fc.assert(
      fc.property(serial, (text) => {
        expect(compareSerials(text, [...text.toLowerCase()].join('-'))).toBe('same');
      }),
    );
  });

  test("one random edit is never 'same' and never 'different'", () => {
    fc.assert(
      fc.property(
        serial,
        fc.nat(),
        character,
        fc.constantFrom('replace', 'drop', 'add', 'swap'),
        (text, at, other, edit) => {
          const i = at % (text.length - 1);
          const edited = {
            replace: text.slice(0, i) + other + text.slice(i + 1),
            drop: text.slice(0, i) + text.slice(i + 1),
            add: text.slice(0, i) + other + text.slice(i),
            swap: text.slice(0, i) + text.charAt(i + 1) + text.charAt(i) + text.slice(i + 2),
          }[edit];
          fc.pre(edited !== text);
          expect(compareSerials(text, edited)).toBe('likely-misread');
        },
      ),
      { numRuns: 2000 },
    );
  });

  test('agrees with Damerau-Levenshtein distances by the full table, for any two serials', () => {
    const short = fc.string({ unit: fc.constantFrom(...'A7X4'), minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(short, short, (a, b) => {
        const distance = editDistance(a, b);
        const expected = distance === 0 ? 'same' : distance === 1 ? 'likely-misread' : 'different';
        expect(compareSerials(a, b)).toBe(expected);
      }),
      { numRuns: 5000 },
    );
  });
});

/** Optimal string alignment by the textbook table (Wagner-Fischer with transposition); the alphabet used has no look-alikes. */
function editDistance(a: string, b: string): number {
  const rows: number[][] = [];
  const cell = (i: number, j: number) => rows[i]?.[j] ?? Number.POSITIVE_INFINITY;
  for (let i = 0; i <= a.length; i += 1) {
    rows.push([]);
    for (let j = 0; j <= b.length; j += 1) {
      const cost = a[i - 1] === b[j - 1] ? 0 : 1;
      const choices = [cell(i - 1, j) + 1, cell(i, j - 1) + 1, cell(i - 1, j - 1) + cost];
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        choices.push(cell(i - 2, j - 2) + 1);
      rows[i]?.push(i + j === 0 ? 0 : Math.min(...choices));
    }
  }
  return cell(a.length, b.length);
}

describe('checking a serial against its model', () => {
  const check = (text: string, pattern: string | null, rule: SerialRule = 'none') =>
    checkSerial(text, { pattern, rule });

  test('a model that says nothing accepts anything but nothing', () => {
    expect(check('whatever 1', null)).toEqual({ ok: true });
    expect(check(' - ', null)).toEqual({ ok: false, reason: 'empty' });
  });

  test('a pattern describes the whole key, whatever the separators', () => {
    expect(check('qa-00 31', 'QA\\d{4}')).toEqual({ ok: true });
    expect(check('QA-00311', 'QA\\d{4}')).toEqual({ ok: false, reason: 'pattern' });
    expect(check('XQA-0031', 'QA\\d{4}')).toEqual({ ok: false, reason: 'pattern' });
    expect(check('B12', 'A|B\\d\\d')).toEqual({ ok: true });
    expect(check('A12', 'A|B\\d\\d')).toEqual({ ok: false, reason: 'pattern' });
  });

  test('a pattern may name the separators as printed', () => {
    expect(check(' qa-0031', 'QA-\\d{4}')).toEqual({ ok: true });
  });

  // Values: see tests/published.
  test.each<[SerialRule, good: string, bad: string]>([
    ['luhn', '7992-7398-713', '79927398714'],
    ['imei', '26-053179-311383-7', '260531793113836'],
    ['mod-11-2', '079-x', '0790'],
    ['mod-37-2', 'abc123g', 'ABC123H'],
    ['mod-37-2', '000001*', '0000010'],
    ['mod-97-10', '794 44', '79445'],
    ['mod-11-10', '07945', '07946'],
    ['mod-37-36', 'A1-2425G-ABC1234002-M', 'A12425GABC1234002N'],
    ['gs1', '0 36000 24145 7', '036000241458'],
  ])('%s accepts %s and warns of %s', (rule, good, bad) => {
    expect(check(good, null, rule)).toEqual({ ok: true });
    expect(check(bad, null, rule)).toEqual({ ok: false, reason: 'check' });
  });

  test('the pattern is named before the check', () => {
    expect(check('79927398714', '\\d{4}', 'luhn')).toEqual({ ok: false, reason: 'pattern' });
  });
});

describe('which patterns a model may carry', () => {
  test.each([
    'QA\\d{4}',
    '(?:QA|QB)\\d{6,8}',
    '[A-Z]{2}-?\\d{4}',
    '\\d+',
    'A\\?\\*\\+\\|\\{\\?\\*',
    '[+*?|]\\d{3}',
  ])('%s is one', (pattern) => {
    expect(isSerialPattern(pattern)).toBe(true);
  });

  test.each([
    ['nothing', ''],
    ['not a regular expression', 'QA[0-9'],
    ['a repeated group', '(\\d+)+'],
    ['a counted group', '(\\d|\\d\\d){9}'],
    ['a back-reference', '(\\d)\\1'],
    ['a look-ahead', '(?=\\d)\\d'],
    ['six choices', '\\d*\\d*\\d*\\d*\\d*\\d*x'],
    ['many alternatives', '(1|1)(1|1)(1|1)(1|1)(1|1)(1|1)x'],
    ['a text without end', 'A'.repeat(201)],
  ])('%s is not', (_name, pattern) => {
    expect(isSerialPattern(pattern)).toBe(false);
    // A model that carries it anyway warns of nothing, rather than stopping a booking.
    expect(checkSerial('QA0031', { pattern, rule: 'none' })).toEqual({ ok: true });
  });

  test('the slowest pattern allowed answers in a moment, even for a text without end', () => {
    const pattern = '\\d*\\d*\\d*\\d*\\d*x';
    expect(isSerialPattern(pattern)).toBe(true);
    const before = process.cpuUsage();
    for (const length of [64, 20_000]) {
      expect(checkSerial('1'.repeat(length), { pattern, rule: 'none' })).toEqual({
        ok: false,
        reason: 'pattern',
      });
    }
    const { user, system } = process.cpuUsage(before);
    expect((user + system) / 1000).toBeLessThan(2000);
  });
});
