import { describe, expect, test } from 'vitest';
import { versionForm } from '@/app/(front)/job/[token]/schema';
import { onlyCounts, onlyPlain } from '@/app/only-plain';
import { countedField } from '@/app/ui/forms/counted-field';
import { pageNumber } from '@/app/ui/page/page-number';

// PostgreSQL manual, "Numeric Types": an integer column holds -2147483648 to 2147483647.
const LARGEST = 2 ** 31 - 1;

describe('numbers that reach the database', () => {
  test.each([
    ['3', 3],
    [String(LARGEST), LARGEST],
  ])('a form may have seen version %s', (typed, read) => {
    expect(countedField.parse(typed)).toBe(read);
    expect(versionForm.parse({ version: typed })).toEqual({ version: read });
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
    expect(versionForm.safeParse({ version: typed }).success).toBe(false);
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

describe('what an action is bound to', () => {
  const nothingHere = expect.objectContaining({ digest: expect.stringContaining(';/nothing-here;') });

  test('texts and nothing pass, versions pass', () => {
    expect(() => onlyPlain('J7K2M4PX3', null)).not.toThrow();
    expect(() => onlyCounts(0, 1, LARGEST)).not.toThrow();
  });

  test.each([5, undefined, { startsWith: 'W' }, ['W'], true])(
    '%j in the place of a text is not found',
    (part) => {
      expect(() => onlyPlain('W', part)).toThrow(nothingHere);
    },
  );

  test.each(['5', null, -1, 1.5, LARGEST + 1, Number.NaN, { gt: 0 }])(
    '%j in the place of a version is not found',
    (part) => {
      expect(() => onlyCounts(1, part)).toThrow(nothingHere);
    },
  );
});
