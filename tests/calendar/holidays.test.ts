import { describe, expect, test } from 'vitest';
import { day } from '@/lib/calendar/day';
import { holidayCalendar } from '@/lib/calendar/holidays';
import { isWorkingDay } from '@/lib/calendar/working';

describe('a working calendar', () => {
  test("holds the holidays of every year asked for, and the workshop's closing days on top", () => {
    const calendar = holidayCalendar({
      country: 'GB',
      region: 'ENG',
      years: [2026, 2027],
      closingDays: [
        { day: day('2026-12-29'), name: 'Stocktaking' },
        { day: day('2026-12-25'), name: 'Harbour fair' },
      ],
    });
    expect(isWorkingDay(day('2026-01-01'), calendar)).toBe(false);
    expect(isWorkingDay(day('2027-01-01'), calendar)).toBe(false);
    expect(calendar.closed.get('2026-12-29')).toBe('Stocktaking');
    expect(calendar.closed.get('2026-12-25')).toBe('Harbour fair');
    expect(calendar.closed.has('2025-12-25')).toBe(false);
  });

  test('rests on Saturday and Sunday unless told otherwise', () => {
    expect(holidayCalendar({ country: 'GB', years: [] })).toEqual({ weekend: [6, 7], closed: new Map() });
    expect(holidayCalendar({ country: 'GB', years: [], weekend: [7] }).weekend).toEqual([7]);
  });

  test('two calendars of one country do not share closing days', () => {
    holidayCalendar({
      country: 'GB',
      years: [2026],
      closingDays: [{ day: day('2026-03-03'), name: 'Moving' }],
    });
    expect(holidayCalendar({ country: 'GB', years: [2026] }).closed.has('2026-03-03')).toBe(false);
  });

  test('a region has its own days', () => {
    const epiphany = '2026-01-06';
    expect(holidayCalendar({ country: 'DE', region: 'BY', years: [2026] }).closed.has(epiphany)).toBe(true);
    expect(holidayCalendar({ country: 'DE', region: 'HH', years: [2026] }).closed.has(epiphany)).toBe(false);
  });

  test('an unknown country or region is refused, since an empty calendar would move deadlines unseen', () => {
    expect(() => holidayCalendar({ country: 'QQ', years: [2026] })).toThrow(RangeError);
    expect(() => holidayCalendar({ country: 'QQ', years: [] })).toThrow(RangeError);
    expect(() => holidayCalendar({ country: 'DE', region: 'QQ', years: [2026] })).toThrow(RangeError);
  });
});
