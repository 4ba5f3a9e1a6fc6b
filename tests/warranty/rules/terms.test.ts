import { describe, expect, it, test } from 'vitest';
import { day } from '@/lib/calendar/day';
import { firstCover } from '@/lib/warranty/rules/first-cover';
import { type PolicyTerms, type TermsProblem, termsProblems } from '@/lib/warranty/rules/terms';
import { readTerms } from '@/lib/warranty/stored-terms';
import { someTerms } from '../made';

const rows: { name: string; changes: Partial<PolicyTerms>; problems: TermsProblem[] }[] = [
  { name: 'sound terms have no problem', changes: {}, problems: [] },
  { name: 'a term in words is no term', changes: { workTerm: '12 months' }, problems: ['work-term'] },
  { name: 'a term of nothing is no term', changes: { partsTerm: 'P0D' }, problems: ['parts-term'] },
  { name: 'work alone may be covered', changes: { partsTerm: null }, problems: [] },
  {
    name: 'a policy that covers nothing is none',
    changes: { workTerm: null, partsTerm: null },
    problems: ['nothing-covered'],
  },
  {
    name: 'a renewed minimum must be a period',
    changes: { renewedMinimum: 'P90' },
    problems: ['renewed-minimum'],
  },
  // Days have years of four digits (ISO 8601), and an end after the last of them could not be written on any paper.
  {
    name: 'a term cannot be longer than a hundred years',
    changes: { workTerm: 'P9999Y', partsTerm: 'P1201M', renewedMinimum: 'P99999W' },
    problems: ['work-term', 'parts-term', 'renewed-minimum'],
  },
  {
    name: 'a hundred years may be promised',
    changes: { workTerm: 'P100Y', partsTerm: 'P36500D' },
    problems: [],
  },
  { name: 'no renewed minimum is fine', changes: { renewedMinimum: null }, problems: [] },
  { name: 'grace cannot be negative', changes: { graceDays: -1 }, problems: ['grace-days'] },
  { name: 'grace is whole days', changes: { graceDays: 1.5 }, problems: ['grace-days'] },
  { name: 'two months of grace would be another term', changes: { graceDays: 61 }, problems: ['grace-days'] },
  {
    name: 'every problem is told at once',
    changes: { workTerm: '', graceDays: 99 },
    problems: ['work-term', 'grace-days'],
  },
];

describe('the terms of a policy', () => {
  it.each(rows)('$name', ({ changes, problems }) => {
    expect(termsProblems(someTerms(changes))).toEqual(problems);
  });
});

test('terms that were kept before a hundred years were the most can still be counted', () => {
  const kept = readTerms({
    ...someTerms(),
    workTerm: 'P9999Y',
    partsTerm: 'P12M',
    renewedMinimum: 'P99999D',
  });
  expect(kept).toMatchObject({ workTerm: 'P100Y', partsTerm: 'P12M', renewedMinimum: 'P100Y' });
});

describe('the first cover lines', () => {
  const covered = [
    { id: 'w1', kind: 'work' as const, description: 'Power socket replaced', symptoms: ['no power'] },
    { id: 'p1', kind: 'part' as const, description: 'Power socket, 2.1 mm', symptoms: ['no power'] },
  ];

  it('give work and parts their own terms from the day of the start event', () => {
    const lines = firstCover(covered, { workTerm: 'P12M', partsTerm: 'P90D' }, day('2026-12-03'));
    expect(lines.map(({ id, term, startsOn, renewedUntil }) => [id, term, startsOn, renewedUntil])).toEqual([
      ['w1', 'P12M', '2026-12-03', null],
      ['p1', 'P90D', '2026-12-03', null],
    ]);
  });

  it('leave out what the policy does not cover', () => {
    const lines = firstCover(covered, { workTerm: 'P12M', partsTerm: null }, day('2026-12-03'));
    expect(lines.map(({ id }) => id)).toEqual(['w1']);
  });

  it.each([
    ['is given on where it is longer', 'P90D', 'P12M', 'P12M'],
    ['never shortens what the policy promises', 'P12M', 'P6M', 'P12M'],
    // From 3 December to 3 March there are ninety days, so three months are no longer.
    ['is not taken where both end on one day', 'P90D', 'P3M', 'P90D'],
  ])('a supplier’s own term %s', (_, partsTerm, ownTerm, expected) => {
    const part = { id: 'p1', kind: 'part' as const, description: 'Socket', symptoms: [], ownTerm };
    const [line] = firstCover([part], { workTerm: null, partsTerm }, day('2026-12-03'));
    expect(line?.term).toBe(expected);
  });

  it('a supplier’s own term covers no part that the policy leaves out', () => {
    const part = { id: 'p1', kind: 'part' as const, description: 'Socket', symptoms: [], ownTerm: 'P12M' };
    expect(firstCover([part], { workTerm: 'P12M', partsTerm: null }, day('2026-12-03'))).toEqual([]);
  });

  it('refuse two lines with one id', () => {
    const twins = [...covered, ...covered];
    expect(() => firstCover(twins, { workTerm: 'P12M', partsTerm: null }, day('2026-12-03'))).toThrow(/w1/);
  });
});
