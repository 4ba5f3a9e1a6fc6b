import { expect, test } from 'vitest';
import type { CheckDraft } from '@/lib/bench/rules/check-problems';
import { workingDaysWords } from '@/lib/calendar/working';
import { coverInBrief, coverWords } from '@/lib/catalogue/rules/cover-words';
import { customerPrice } from '@/lib/catalogue/rules/price';
import { isSameSheet, isSameTerms } from '@/lib/catalogue/rules/same';
import { freeSlug, slugOf } from '@/lib/catalogue/rules/slug';
import type { PolicyTerms } from '@/lib/warranty/rules/terms';

test.each([
  {
    name: 'kept with tax',
    repair: { priceMinor: 4800, taxCategory: 'S', taxRateBps: 2000 },
    withTax: true,
    gross: 4800,
    tax: 800,
  },
  {
    name: 'kept without tax',
    repair: { priceMinor: 4800, taxCategory: 'S', taxRateBps: 2000 },
    withTax: false,
    gross: 5760,
    tax: 960,
  },
  {
    name: 'exempt',
    repair: { priceMinor: 4800, taxCategory: 'E', taxRateBps: 0 },
    withTax: false,
    gross: 4800,
    tax: 0,
  },
  // EN 16931 BR-CO-17, half up: 1460.50 at 25 % is 365.13 of tax (published example 2).
  {
    name: 'half a penny',
    repair: { priceMinor: 146_050, taxCategory: 'S', taxRateBps: 2500 },
    withTax: false,
    gross: 182_563,
    tax: 36_513,
  },
] as const)('a price $name', ({ repair, withTax, gross, tax }) => {
  expect(customerPrice(repair, withTax)).toEqual({ gross, tax });
});

test.each([
  ['Skerrin Two (MkII)', 'skerrin-two-mkii'],
  ['Väsby Keel 49', 'vasby-keel-49'],
  ['  ', 'x'],
  ['a'.repeat(80), 'a'.repeat(60)],
])('"%s" becomes %s', (name, slug) => {
  expect(slugOf(name)).toBe(slug);
});

test('a taken address gets a number', () => {
  expect(freeSlug('keel', new Set())).toBe('keel');
  expect(freeSlug('keel', new Set(['keel', 'keel-2']))).toBe('keel-3');
});

const check: CheckDraft = {
  kind: 'choice',
  label: 'Noise',
  help: '',
  unit: null,
  low: null,
  high: null,
  choices: ['clean', 'hum'],
  passing: ['clean'],
  lesson: null,
  caution: null,
};

test.each([
  { name: 'the same checks', other: [{ ...check }], same: true },
  { name: 'another label', other: [{ ...check, label: 'Hum' }], same: false },
  { name: 'another limit', other: [{ ...check, low: 1 }], same: false },
  { name: 'choices in another order', other: [{ ...check, choices: ['hum', 'clean'] }], same: false },
  { name: 'other choices that pass', other: [{ ...check, passing: ['hum'] }], same: false },
  { name: 'one check more', other: [check, check], same: false },
  { name: 'none', other: [], same: false },
])('a sheet with $name is the same: $same', ({ other, same }) => {
  expect(isSameSheet([check], other)).toBe(same);
});

const terms: PolicyTerms = {
  startEvent: 'delivered',
  workTerm: 'P12M',
  partsTerm: null,
  exclusions: ['liquid'],
  renewedMinimum: 'P90D',
  heldRule: 'whole-days',
  rollLastDay: true,
  graceDays: 7,
  transferable: true,
};

test.each([
  { name: 'nothing changed', change: {}, same: true },
  { name: 'a longer term', change: { workTerm: 'P24M' }, same: false },
  { name: 'one exclusion more', change: { exclusions: ['liquid', 'fire'] }, same: false },
  { name: 'more grace', change: { graceDays: 8 }, same: false },
])('terms with $name are the same: $same', ({ change, same }) => {
  expect(isSameTerms(terms, { ...terms, ...change })).toBe(same);
});

test.each([
  { workTerm: 'P12M', partsTerm: 'P12M', words: '12 months on work and parts' },
  { workTerm: 'P30D', partsTerm: 'P90D', words: 'work 30 days, parts 90 days' },
  { workTerm: 'P1Y', partsTerm: null, words: '1 year on work' },
  { workTerm: null, partsTerm: 'P6M', words: '6 months on parts' },
  { workTerm: null, partsTerm: null, words: 'no cover of its own' },
])('cover of $workTerm and $partsTerm reads: $words', ({ words, ...terms }) => {
  expect(coverWords(terms)).toBe(words);
});

test('one working day is one', () => {
  expect([1, 5].map(workingDaysWords)).toEqual(['1 working day', '5 working days']);
});

test.each([
  [{ workTerm: 'P12M', partsTerm: 'P12M' }, '12 months'],
  [{ workTerm: null, partsTerm: 'P6M' }, '6 months on parts'],
  [{ workTerm: null, partsTerm: null }, 'none of its own'],
])('cover in brief %#', (terms, words) => {
  expect(coverInBrief(terms)).toBe(words);
});
