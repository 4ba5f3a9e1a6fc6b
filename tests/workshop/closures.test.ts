import { describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import type { WorkingCalendar } from '@/lib/calendar/working';
import { closureProblem, closures, closureToTell } from '@/lib/workshop/rules/closures';

// Christmas Day 2026 is a Friday, Saturday the 26th is Boxing Day and Monday the 28th its substitute (Banking and Financial Dealings Act 1971).
const closed = (...days: [string, string][]) => days.map(([text, name]) => ({ day: day(text), name }));
const calendarOf = (rows: { day: string; name: string }[]): WorkingCalendar => ({
  weekend: [6, 7],
  closed: new Map([
    ['2026-12-25', 'Christmas Day'],
    ['2026-12-28', 'Boxing Day'],
    ['2027-01-01', 'New Year’s Day'],
    ...rows.map((row) => [row.day, row.name] as const),
  ]),
});

describe('closures', () => {
  it('join days between which nobody works, and keep reasons apart', () => {
    const rows = closed(
      ['2026-12-03', 'Stocktaking'],
      ['2026-12-23', 'Winter break'],
      ['2026-12-24', 'Winter break'],
      ['2026-12-29', 'Winter break'],
      ['2026-12-30', 'Painting'],
    );
    expect(closures(rows, calendarOf(rows))).toEqual([
      { from: '2026-12-03', to: '2026-12-03', name: 'Stocktaking' },
      { from: '2026-12-23', to: '2026-12-29', name: 'Winter break' },
      { from: '2026-12-30', to: '2026-12-30', name: 'Painting' },
    ]);
  });

  it('are two where a day is worked between them', () => {
    const rows = closed(['2026-12-01', 'Course'], ['2026-12-03', 'Course']);
    expect(closures(rows, calendarOf(rows))).toHaveLength(2);
  });
});

describe('customers are told of a closure', () => {
  const rows = closed(['2026-12-30', 'Winter break'], ['2026-12-31', 'Winter break']);
  const calendar = calendarOf(rows);
  const told = (today: string) => closureToTell(closures(rows, calendar), { today: day(today), calendar });

  it.each([
    ['2026-12-15', false],
    ['2026-12-16', true],
    ['2026-12-31', true],
    ['2027-01-01', false],
  ])('on %s: %s', (today, isTold) => {
    expect(told(today) !== null).toBe(isTold);
  });

  it('with the first day on which somebody works again', () => {
    // Friday 1 January is a holiday, and a weekend follows.
    expect(told('2026-12-30')).toEqual({
      from: '2026-12-30',
      to: '2026-12-31',
      name: 'Winter break',
      backOn: '2027-01-04',
    });
  });
});

it('a closure ends no earlier than it begins, and after sixty days at most', () => {
  const from = day('2026-12-01');
  expect(closureProblem({ from, to: from })).toBeNull();
  expect(closureProblem({ from, to: day('2026-11-30') })).toBe('The last day is before the first');
  expect(closureProblem({ from, to: day('2027-01-29') })).toBeNull();
  expect(closureProblem({ from, to: day('2027-01-30') })).toBe('Close at most 60 days at once');
});
