import { describe, expect, test } from 'vitest';
import { evaluateEntry } from '@/lib/bench/rules/checks';
import { addDays, day, isoWeekday } from '@/lib/calendar/day';
import { isWorkingDay } from '@/lib/calendar/working';
import { addressAnswers } from '@/lib/jobs/rules/address';
import { DEMO_REPAIRS } from '@/prisma/demo/catalogue';
import { pick, sourceOf } from '@/prisma/demo/chance';
import { DEMO_ADDRESSES } from '@/prisma/demo/customers';
import { clock, dayOfInstant, demoDays } from '@/prisma/demo/days';
import { passingEntry } from '@/prisma/demo/readings';
import { justLapsed } from '@/prisma/demo/stories/claims-open';

describe('the days of the demonstration', () => {
  test.each([
    ['a Wednesday', '2026-11-25T10:30:00Z', '2026-11-24'],
    ['a Monday', '2026-11-23T10:30:00Z', '2026-11-20'],
    [
      'just after midnight in summer, when UTC still has the day before',
      '2026-06-30T23:30:00Z',
      '2026-06-30',
    ],
    ['the first working day of a year', '2027-01-04T06:00:00Z', '2026-12-24'],
    ['Easter Monday', '2027-03-29T12:00:00Z', '2027-03-25'],
  ])('on %s the last day worked was the one before', (_name, now, worked) => {
    expect(demoDays(new Date(now)).back(0)).toBe(worked);
  });

  test('a clock in the workshop shows summer time in summer', () => {
    expect(clock(day('2026-11-25'), '09:40').toISOString()).toBe('2026-11-25T09:40:00.000Z');
    expect(clock(day('2026-07-01'), '09:40').toISOString()).toBe('2026-07-01T08:40:00.000Z');
    expect(dayOfInstant(clock(day('2026-07-01'), '00:10'))).toBe('2026-07-01');
  });

  test('on every day of two years some day fits the claim in its days of grace', () => {
    for (let n = 0; n < 731; n += 1) {
      const today = addDays(day('2026-11-25'), n);
      const days = demoDays(clock(today, '08:00'));
      const { sentOn, claimedOn, arrivedOn } = justLapsed(days);
      expect(isWorkingDay(sentOn, days.calendar)).toBe(true);
      expect(isoWeekday(arrivedOn)).toBeLessThan(6);
      expect(claimedOn < arrivedOn && arrivedOn < today).toBe(true);
    }
  }, 120_000);
});

test('chance is the same each time and differs from name to name', () => {
  const draws = (name: string) => {
    const source = sourceOf(name);
    return Array.from({ length: 200 }, () => source(32));
  };
  expect(draws('a')).toEqual(draws('a'));
  expect(draws('a')).not.toEqual(draws('b'));
  expect(new Set(draws('a')).size).toBeGreaterThan(28);
  expect(Math.max(...draws('a'))).toBeLessThan(32);
  const picked = Array.from({ length: 300 }, (_, i) => pick(`n${i}`, 3, 5));
  expect(new Set(picked)).toEqual(new Set([3, 4, 5]));
});

test('a reading that should pass passes on every sheet', () => {
  for (const check of DEMO_REPAIRS.flatMap((repair) => repair.sheets.flatMap((sheet) => sheet.checks))) {
    for (const job of ['a', 'b', 'c', 'd']) {
      expect(evaluateEntry(check, passingEntry(check, job))).toMatchObject({ ok: true, isPassed: true });
    }
  }
});

test('every address fills the form of a booking', () => {
  for (const address of DEMO_ADDRESSES) {
    expect(addressAnswers.parse(address)).toEqual(address);
  }
});
