import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  guardText,
  joinEntries,
  openText,
  partEntry,
  readPartEntry,
  splitEntries,
} from '@/lib/catalogue/rules/list-cells';

// OWASP ASVS 5.0, 1.2.10 names =, +, -, @ and tab, and the single quote in front; the others are from memory.
const RUNS = ['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠'];

describe('a cell that a spreadsheet would run', () => {
  test.each(RUNS.map((sign) => [JSON.stringify(sign), sign]))('%s in front gets an apostrophe', (_, sign) => {
    expect(guardText(`${sign}1+1`)).toBe(`'${sign}1+1`);
    expect(openText(`'${sign}1+1`)).toBe(`${sign}1+1`);
  });

  test('others stay as they are, also those that begin with an apostrophe', () => {
    for (const text of ["'tis", "'", '', 'USB-C', '1=1']) {
      expect(guardText(text)).toBe(text);
      expect(openText(text)).toBe(text);
    }
  });

  test('comes back exactly, whatever it is, and never starts a formula', () => {
    const first = fc.constantFrom('', "'", "''", ...RUNS, "'=");
    fc.assert(
      fc.property(first, fc.string({ unit: 'binary' }), (start, rest) => {
        const text = start + rest;
        expect(openText(guardText(text))).toBe(text);
        expect(RUNS).not.toContain(guardText(text)[0]);
      }),
    );
  });
});

describe('a list in one cell', () => {
  test.each([
    ['USB cable; Lid', ['USB cable', 'Lid']],
    [' USB cable ;; Lid ; ', ['USB cable', 'Lid']],
    ['Lid; Lid', ['Lid']],
    ['one\ntwo', ['one', 'two']],
    ['a\\; b; c\\\\', ['a; b', 'c\\']],
    ["'=1; x", ['=1', 'x']],
    ['', []],
  ])('%j is %j', (cell, entries) => {
    expect(splitEntries(cell)).toEqual(entries);
  });

  test('comes back exactly for whatever a form can keep', () => {
    const entry = fc
      .string({ unit: fc.constantFrom(..."ab ;\\'=+-@x", '\u00e9', ','), minLength: 1, maxLength: 12 })
      .map((text) => text.trim())
      .filter((text) => text !== '');
    fc.assert(
      fc.property(fc.uniqueArray(entry, { maxLength: 6 }), (entries) => {
        expect(splitEntries(joinEntries(entries))).toEqual(entries);
      }),
      { numRuns: 1000 },
    );
  });
});

test.each([
  [{ code: 'USB-C-24', quantity: 1 }, 'USB-C-24'],
  [{ code: 'DIN-5', quantity: 2 }, 'DIN-5 x2'],
])('%j is written %s', (need, entry) => {
  expect(partEntry(need)).toBe(entry);
  expect(readPartEntry(entry)).toEqual(need);
});

test.each([
  ['din-5 X 2', { code: 'din-5 X 2', quantity: 1 }],
  ['DIN-5  ×12', { code: 'DIN-5', quantity: 12 }],
  ['M3x8', { code: 'M3x8', quantity: 1 }],
  ['DIN-5 x0', { code: 'DIN-5', quantity: 0 }],
])('"%s" is read as %j', (entry, need) => {
  expect(readPartEntry(entry)).toEqual(need);
});
