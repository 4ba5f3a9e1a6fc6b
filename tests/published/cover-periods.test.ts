import { describe, expect, it } from 'vitest';
import { addDays, day, dayInZone, daysBetween, startOfDay } from '@/lib/calendar/day';
import { holidayCalendar } from '@/lib/calendar/holidays';
import { addPeriod } from '@/lib/calendar/period';
import { coverEnd, lastClaimDay, originalEnd } from '@/lib/warranty/rules/cover';
import { heldDays } from '@/lib/warranty/rules/held';
import { renewCover } from '@/lib/warranty/rules/renew';
import type { CoverLine, HeldRule } from '@/lib/warranty/rules/terms';
import { PERIODS, THREE_WEEKS } from './period-vectors';

function lineFrom(startsOn: string, term: string): CoverLine {
  return {
    id: 'usb',
    kind: 'work',
    description: 'USB socket soldered',
    symptoms: [],
    term,
    startsOn: day(startsOn),
    renewedUntil: null,
  };
}

function stay(from: string, to: string) {
  return { from: day(from), to: day(to), claimNumber: 'C2222222A' };
}

describe('the term of a cover line, against published vectors', () => {
  it.each(PERIODS)('%s and %s end on %s (%s)', (start, term, end) => {
    expect(originalEnd(lineFrom(start, term))).toBe(end);
  });

  it('half a year is six months and a quarter three (BGB 189)', () => {
    expect(originalEnd(lineFrom('2026-08-31', 'P6M'))).toBe('2027-02-28');
    expect(originalEnd(lineFrom('2026-08-31', 'P3M'))).toBe('2026-11-30');
  });

  it('two terms chained are not one longer term, so the start is never replaced by an end (TC39 proposal-temporal)', () => {
    const chained = originalEnd(lineFrom(originalEnd(lineFrom('2025-01-31', 'P1M')), 'P1M'));
    expect(chained).toBe('2025-03-28');
    expect(originalEnd(lineFrom('2025-01-31', 'P2M'))).toBe('2025-03-31');
  });
});

describe('a term in weeks', () => {
  it.each(THREE_WEEKS)('three weeks from %s end on %s (CJEU C-171/03 Toeters)', (start, end) => {
    expect(originalEnd(lineFrom(start, 'P3W'))).toBe(end);
  });
});

describe('the last day to act, rolled by Regulation 1182/71 Art. 3(4) and BGB 193', () => {
  const england = holidayCalendar({ country: 'GB', region: 'ENG', years: [2026, 2027] });
  const germany = holidayCalendar({ country: 'DE', years: [2026, 2027] });
  const rows = [
    { from: '2026-12-01', end: '2026-12-15', calendar: england, place: 'England', last: '2026-12-15' },
    { from: '2026-12-12', end: '2026-12-26', calendar: germany, place: 'Germany', last: '2026-12-28' },
    { from: '2026-12-12', end: '2026-12-26', calendar: england, place: 'England', last: '2026-12-29' },
    { from: '2026-12-19', end: '2027-01-02', calendar: england, place: 'England', last: '2027-01-04' },
    { from: '2026-12-19', end: '2027-01-02', calendar: germany, place: 'Germany', last: '2027-01-04' },
  ];
  it.each(rows)('14 days from $from in $place: last claim day $last (holidays of date-holidays)', (row) => {
    const end = originalEnd(lineFrom(row.from, 'P14D'));
    expect(end).toBe(row.end);
    expect(lastClaimDay(end, { rollLastDay: true }, row.calendar)).toBe(row.last);
  });
});

describe('days out of the customer’s hands', () => {
  const year = lineFrom('2026-01-15', 'P12M');
  const endUnder = (heldRule: HeldRule, from: string, to: string) =>
    coverEnd(year, [stay(from, to)], { heldRule });

  it('1 to 21 July 2026 are 20 whole days: 15 January becomes 4 February 2027 (Cal. Civ. Code 1795.6, rule of whole days from memory, dates computed)', () => {
    expect(heldDays([stay('2026-07-01', '2026-07-21')], 'whole-days')).toBe(20);
    expect(endUnder('whole-days', '2026-07-01', '2026-07-21')).toBe('2027-02-04');
  });

  it('the hand-in day is not counted: counting both days would give 5 February 2027', () => {
    expect(addDays(endUnder('whole-days', '2026-07-01', '2026-07-21'), 1)).toBe('2027-02-05');
  });

  it('six days out change nothing under the threshold of seven (FR C. conso. L217-16, until 2021)', () => {
    expect(endUnder('from-seven-days', '2026-07-01', '2026-07-07')).toBe('2027-01-15');
  });

  it('seven days out are added whole (FR C. conso. L217-16, until 2021)', () => {
    expect(endUnder('from-seven-days', '2026-07-01', '2026-07-08')).toBe('2027-01-22');
  });

  it('the rest of the term waits while the unit is away, and runs on from its return (FR C. conso. L217-28)', () => {
    const end = endUnder('whole-days', '2026-07-01', '2026-07-21');
    const leftAtHandIn = daysBetween(day('2026-07-01'), day('2027-01-15'));
    expect(daysBetween(day('2026-07-21'), end)).toBe(leftAtHandIn);
  });

  it('handed back on 20 February 2027, that fault is covered until 20 April (BGB 475e(4))', () => {
    const line = lineFrom('2026-03-01', 'P12M');
    expect(originalEnd(line)).toBe('2027-03-01');
    const { endings } = renewCover({
      lines: [line, { ...line, id: 'pot' }],
      touched: ['usb'],
      heldBefore: [],
      heldNow: stay('2027-02-01', '2027-02-20'),
      terms: { heldRule: 'two-months-from-return', renewedMinimum: null },
    });
    expect(endings).toEqual([
      { lineId: 'usb', was: '2027-03-01', now: '2027-04-20' },
      { lineId: 'pot', was: '2027-03-01', now: '2027-03-01' },
    ]);
  });
});

describe('a change of the clocks', () => {
  // Day lengths from the IANA time zone database as Node carries it.
  const hours = (d: string) =>
    (startOfDay(addDays(day(d), 1), 'Europe/Berlin').getTime() -
      startOfDay(day(d), 'Europe/Berlin').getTime()) /
    3_600_000;

  it('makes days of 23 and 25 hours in Berlin, and moves no end of cover', () => {
    expect([hours('2025-03-30'), hours('2025-10-26')]).toEqual([23, 25]);
    expect(addPeriod(day('2025-03-29'), 'P1D')).toBe('2025-03-30');
    expect(originalEnd(lineFrom('2024-10-26', 'P12M'))).toBe('2025-10-26');
    expect(heldDays([stay('2025-03-29', '2025-03-31')], 'whole-days')).toBe(2);
  });

  it('the last instant of cover is the one before the next day starts in the workshop’s zone', () => {
    const end = originalEnd(lineFrom('2025-06-30', 'P12M'));
    const after = startOfDay(addDays(end, 1), 'Europe/London');
    expect(after.toISOString()).toBe('2026-06-30T23:00:00.000Z');
    expect(dayInZone(new Date(after.getTime() - 1), 'Europe/London')).toBe('2026-06-30');
    expect(dayInZone(after, 'Europe/London')).toBe('2026-07-01');
  });
});
