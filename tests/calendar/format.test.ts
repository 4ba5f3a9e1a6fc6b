import { describe, expect, test } from 'vitest';
import { day } from '@/lib/calendar/day';
import { formatClock, formatDay, formatInstant, formatMonth, formatTick } from '@/lib/calendar/format';

describe('a day for reading', () => {
  test.each([
    ['en-GB', 'short', '3 Dec 2026'],
    ['en-GB', 'weekday', 'Thursday 3 December 2026'],
    ['de-DE', 'weekday', 'Thursday 3 December 2026'],
    ['en-US', 'weekday', 'Thursday, December 3, 2026'],
  ] as const)('%s %s: %s', (locale, style, text) => {
    expect(formatDay(day('2026-12-03'), locale, style)).toBe(text);
  });

  test('no zone moves it: the first and last day of a year keep their year', () => {
    expect(formatDay(day('2026-01-01'), 'en-GB', 'short')).toBe('1 Jan 2026');
    expect(formatDay(day('2026-12-31'), 'en-GB', 'short')).toBe('31 Dec 2026');
  });
});

test('a tick of a plot is a day with its weekday or its month', () => {
  expect(formatTick(day('2026-12-03'), 'en-GB', 'weekday')).toBe('Thu 3');
  expect(formatTick(day('2026-12-03'), 'en-GB', 'month')).toBe('3 Dec');
});

test('a workshop that writes amounts in another language has its days in English', () => {
  expect(formatDay(day('2026-12-03'), 'fr-FR', 'short')).toBe('3 Dec 2026');
  expect(formatMonth('2026-12', 'fr-FR')).toBe('Dec 26');
  expect(formatMonth('2026-12', 'en-GB', 'long')).toBe('December 2026');
  expect(formatTick(day('2026-12-03'), 'fr-FR', 'weekday')).toBe('Thu 3');
});

describe('an instant for reading', () => {
  const instant = new Date('2026-12-03T14:05:00Z');

  test("is shown on the workshop's clock", () => {
    expect(formatInstant(instant, { locale: 'en-GB', zone: 'Europe/London' })).toBe('3 Dec 2026, 14:05');
    expect(formatInstant(instant, { locale: 'en-GB', zone: 'Europe/Berlin' })).toBe('3 Dec 2026, 15:05');
    expect(formatInstant(new Date('2026-07-03T23:30:00Z'), { locale: 'en-GB', zone: 'Europe/London' })).toBe(
      '4 Jul 2026, 00:30',
    );
  });

  test('may be shown as the time of day alone', () => {
    expect(formatClock(instant, { locale: 'en-GB', zone: 'Europe/Berlin' })).toBe('15:05');
    expect(formatClock(new Date('2026-12-03T00:00:00Z'), { locale: 'en-US', zone: 'UTC' })).toBe('00:00');
  });

  test('runs from 00 to 23, also where the language would say noon and midnight', () => {
    const midnight = new Date('2026-12-03T00:00:00Z');
    expect(formatInstant(midnight, { locale: 'en-US', zone: 'UTC' })).toBe('Dec 3, 2026, 00:00');
  });

  test('an unknown zone is refused', () => {
    expect(() => formatInstant(instant, { locale: 'en-GB', zone: 'Europe/Sandmouth' })).toThrow(RangeError);
  });
});
