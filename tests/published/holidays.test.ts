import { describe, expect, test } from 'vitest';
import { holidayCalendar } from '@/lib/calendar/holidays';

// The dates of 2026 as governments publish them: gov.uk bank holidays for England, Berlin's holiday law, the holidays
// of 5 USC 6103 with the observance of 3 July. Compared with npm date-holidays 3.37.0, which the calendar is made from; the published lists from memory.
const year2026: [country: string, region: string | undefined, dates: string][] = [
  ['GB', 'ENG', '01-01 04-03 04-06 05-04 05-25 08-31 12-25 12-26 12-28'],
  ['DE', 'BE', '01-01 03-08 04-03 04-06 05-01 05-14 05-25 10-03 12-25 12-26'],
  ['US', undefined, '01-01 01-19 02-16 05-25 06-19 07-03 07-04 09-07 10-12 11-11 11-26 12-25'],
];

describe('public holidays of 2026', () => {
  test.each(year2026)('%s %s', (country, region, dates) => {
    const calendar = holidayCalendar({ country, region, years: [2026] });
    expect([...calendar.closed.keys()].sort()).toEqual(dates.split(' ').map((date) => `2026-${date}`));
  });

  // Boxing Day 2026 is a Saturday, so England rests on Monday the 28th.
  test("Boxing Day's substitute is named", () => {
    const calendar = holidayCalendar({ country: 'GB', region: 'ENG', years: [2026] });
    expect(calendar.closed.get('2026-12-28')).toMatch(/Boxing Day/);
  });
});

describe('holidays that are not one plain day', () => {
  // Brandenburg's holiday law names Easter Sunday; in 2027 it is the day of 23 hours (from memory).
  test('a holiday on the day of the change to summer time is kept', () => {
    const calendar = holidayCalendar({ country: 'DE', region: 'BB', years: [2027] });
    expect(calendar.closed.has('2027-03-28')).toBe(true);
    expect(calendar.closed.has('2027-03-27')).toBe(false);
  });

  // Turkey's Law 2429: the feast of Ramadan lasts three days and a half, the feast of sacrifice four and a half (from memory).
  test('a feast of several days closes each whole day', () => {
    const { closed } = holidayCalendar({ country: 'TR', years: [2026] });
    const between = (from: string, to: string) =>
      [...closed.keys()].filter((d) => d >= from && d <= to).sort();
    expect(between('2026-03-18', '2026-03-24')).toEqual(['2026-03-20', '2026-03-21', '2026-03-22']);
    expect(between('2026-05-24', '2026-06-01')).toEqual([
      '2026-05-27',
      '2026-05-28',
      '2026-05-29',
      '2026-05-30',
    ]);
  });

  // China's Regulation on Public Holidays gives half a day on 4 May to the young (from memory).
  test('half a holiday leaves a working day', () => {
    const { closed } = holidayCalendar({ country: 'CN', years: [2026] });
    expect(closed.has('2026-05-04')).toBe(false);
    expect(closed.has('2026-05-01')).toBe(true);
  });
});
