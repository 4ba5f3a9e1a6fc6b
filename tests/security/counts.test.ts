import { describe, expect, test } from 'vitest';
import { decisionForm } from '@/app/(front)/job/[token]/schema';
import { onlyCounts, onlyPlain, onlyPlainOrNew } from '@/app/only-plain';
import { countedField } from '@/app/ui/forms/counted-field';
import { seenAtField } from '@/app/ui/forms/seen-at-field';
import { pageNumber } from '@/app/ui/page/page-number';
import { keptMoneySentence, readKeptMoney } from '@/lib/money/read-kept-money';

// PostgreSQL manual, "Numeric Types": an integer column holds -2147483648 to 2147483647.
const LARGEST = 2 ** 31 - 1;

describe('numbers that reach the database', () => {
  test.each([
    ['3', 3],
    [String(LARGEST), LARGEST],
  ])('a form may have seen version %s', (typed, read) => {
    expect(countedField.parse(typed)).toBe(read);
    expect(decisionForm.parse({ revision: typed, decision: 'declined' }).revision).toBe(read);
  });

  test.each([
    String(LARGEST + 1),
    '9007199254740993',
    '1e309',
    '0',
    '-1',
    '1.5',
    'NaN',
    '',
    '٣',
    null,
    undefined,
  ])('no form has seen version %s', (typed) => {
    expect(countedField.safeParse(typed).success).toBe(false);
    expect(decisionForm.safeParse({ revision: typed, decision: 'declined' }).success).toBe(false);
  });

  test.each([
    [undefined, 1],
    ['', 1],
    ['2', 2],
    ['2.9', 2],
    ['0', 1],
    ['-4', 1],
    ['abc', 1],
    [['2', '3'], 1],
    ['9007199254740993', 100_000],
    ['1e309', 100_000],
  ])('the page %j of a list is page %d', (asked, page) => {
    expect(pageNumber(asked)).toBe(page);
  });
});

describe('amounts and instants that reach the database', () => {
  test.each([
    ['21474836.47', LARGEST],
    ['-21474836.47', -LARGEST],
    ['14,50', 1450],
  ])('%s pounds are kept', (typed, minor) => {
    expect(readKeptMoney(typed, 'GBP')).toEqual({ ok: true, minor });
  });

  test.each(['21474836.48', '-21474836.48', '90071992547409.91', '999999999999999999999'])(
    '%s pounds are too much',
    (typed) => {
      expect(readKeptMoney(typed, 'GBP')).toEqual({ ok: false, reason: 'range' });
    },
  );

  test.each([
    ['range', 'GBP', 'Enter 21474836.47 or less'],
    ['range', 'JPY', 'Enter 2147483647 or less'],
    ['format', 'GBP', 'Enter the amount like 24.00'],
  ] as const)('%s in %s is told as %j', (reason, currency, sentence) => {
    expect(keptMoneySentence(reason, currency, 'Enter the amount like 24.00')).toBe(sentence);
  });

  test('a form may have seen a row of 2026', () => {
    const text = '2026-11-25T09:00:00.000Z';
    expect(seenAtField.parse(text)).toEqual(new Date(text));
  });

  // ECMA-262 knows the first two; PostgreSQL's timestamps (manual, Date/Time Types) begin in 4713 BC and have no year 0.
  test.each([
    '-271821-04-20T00:00:00.000Z',
    '+275760-09-13T00:00:00.000Z',
    '0000-01-01T00:00:00.000Z',
    '2026-02-30T00:00:00.000Z',
    '9007199254740993',
    '2026',
    '',
    null,
  ])('no form has seen a row of %s', (text) => {
    expect(seenAtField.safeParse(text).success).toBe(false);
  });
});

describe('what an action is bound to', () => {
  const nothingHere = expect.objectContaining({ digest: expect.stringContaining(';/nothing-here;') });

  test('texts pass, nothing where something may be new, and versions', () => {
    expect(() => onlyPlain('J7K2M4PX3', '')).not.toThrow();
    expect(() => onlyPlainOrNew(null)).not.toThrow();
    expect(() => onlyPlainOrNew('usb-type-c')).not.toThrow();
    expect(() => onlyCounts(0, 1, LARGEST)).not.toThrow();
  });

  // What arrives is not of the type that the action says it takes.
  const givenAnything = (guard: (...bound: never[]) => void, ...bound: unknown[]) =>
    Reflect.apply(guard, undefined, bound);

  test.each([5, undefined, { startsWith: 'W' }, ['W'], true])(
    '%j in the place of a text is not found',
    (part) => {
      expect(() => givenAnything(onlyPlain, 'W', part)).toThrow(nothingHere);
      expect(() => givenAnything(onlyPlainOrNew, part)).toThrow(nothingHere);
    },
  );

  test('nothing in the place of a link or a number is not found', () => {
    expect(() => givenAnything(onlyPlain, null)).toThrow(nothingHere);
  });

  test.each(['5', null, -1, 1.5, LARGEST + 1, Number.NaN, { gt: 0 }])(
    '%j in the place of a version is not found',
    (part) => {
      expect(() => onlyCounts(1, part)).toThrow(nothingHere);
    },
  );
});
