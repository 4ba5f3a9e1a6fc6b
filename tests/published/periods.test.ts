import fc from 'fast-check';
import { DateTime } from 'luxon';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import {
  addDays,
  type Day,
  day,
  dayFromSerial,
  dayInZone,
  daysBetween,
  isoWeekday,
  serialDay,
  startOfDay,
} from '@/lib/calendar/day';
import { holidayCalendar } from '@/lib/calendar/holidays';
import { addPeriod } from '@/lib/calendar/period';
import { nextWorkingDay } from '@/lib/calendar/working';
import { PERIODS, THREE_WEEKS } from './period-vectors';

describe('the last day of a period', () => {
  test.each(PERIODS)('from %s for %s is %s (%s)', (start, period, last) => {
    expect(addPeriod(day(start), period)).toBe(last);
  });

  test.each(THREE_WEEKS)('three weeks from %s end on %s (Toeters)', (start, last) => {
    expect(addPeriod(day(start), 'P3W')).toBe(last);
    expect(isoWeekday(day(last))).toBe(isoWeekday(day(start)));
  });

  // BGB 187(2), 188(2) second alternative: where the start of a day decides, that day counts, so one begins a day earlier.
  test('a term that counts its first whole day ends a day earlier', () => {
    expect(addPeriod(addDays(day('2026-01-15'), -1), 'P12M')).toBe('2027-01-14');
  });

  test('two months in a row are not one term of two months', () => {
    const start = day('2025-01-31');
    expect(addPeriod(addPeriod(start, 'P1M'), 'P1M')).toBe('2025-03-28');
    expect(addPeriod(start, 'P2M')).toBe('2025-03-31');
  });
});

describe('a last day to act that falls on a holiday (Reg. 1182/71 Art. 3(4))', () => {
  const germany = holidayCalendar({ country: 'DE', years: [2026, 2027] });
  const england = holidayCalendar({ country: 'GB', region: 'ENG', years: [2026, 2027] });
  const boxingDay = addPeriod(day('2026-12-12'), 'P14D');

  test('Saturday 26 December 2026 rolls to Monday in Germany', () => {
    expect(boxingDay).toBe('2026-12-26');
    expect(nextWorkingDay(boxingDay, germany)).toBe('2026-12-28');
  });

  test("and to Tuesday in England, where Monday is Boxing Day's substitute", () => {
    expect(nextWorkingDay(boxingDay, england)).toBe('2026-12-29');
  });

  test('Saturday 2 January 2027 rolls to Monday', () => {
    const last = addPeriod(day('2026-12-19'), 'P14D');
    expect(last).toBe('2027-01-02');
    expect(nextWorkingDay(last, germany)).toBe('2027-01-04');
  });
});

describe("days that are shorter or longer than 24 hours (tz database, from Node's Intl)", () => {
  const hours = (d: string, zone: string) =>
    (startOfDay(addDays(day(d), 1), zone).getTime() - startOfDay(day(d), zone).getTime()) / 3_600_000;

  test('in Berlin the changes of 2025 make days of 23 and 25 hours', () => {
    expect(hours('2025-03-30', 'Europe/Berlin')).toBe(23);
    expect(hours('2025-10-26', 'Europe/Berlin')).toBe(25);
  });

  test('1 July 2026 starts in London and New York where the tables say', () => {
    expect(startOfDay(day('2026-07-01'), 'Europe/London').toISOString()).toBe('2026-06-30T23:00:00.000Z');
    expect(startOfDay(day('2026-07-01'), 'America/New_York').toISOString()).toBe('2026-07-01T04:00:00.000Z');
  });

  test('4 November 2018 had no midnight in Sao Paulo: it started at one', () => {
    expect(startOfDay(day('2018-11-04'), 'America/Sao_Paulo').toISOString()).toBe('2018-11-04T03:00:00.000Z');
  });
});

describe('10,000 random cases against temporal-polyfill and luxon', () => {
  const start = fc
    .integer({ min: serialDay(day('1900-01-01')), max: serialDay(day('2200-12-31')) })
    .map(dayFromSerial);
  const upTo = (max: number) => fc.nat({ max });
  const runs = { numRuns: 10_000 };

  test('years, months, weeks and days added at once, in constrain mode', () => {
    fc.assert(
      fc.property(start, upTo(20), upTo(40), upTo(60), upTo(800), (from, years, months, weeks, days) => {
        fc.pre(years + months + weeks + days > 0);
        const last = addPeriod(from, `P${years}Y${months}M${weeks}W${days}D`);
        const period = { years, months, weeks, days };
        expect(last).toBe(Temporal.PlainDate.from(from).add(period, { overflow: 'constrain' }).toString());
        expect(last).toBe(DateTime.fromISO(from, { zone: 'utc' }).plus(period).toISODate());
      }),
      runs,
    );
  });

  test('days added, counted and named by weekday', () => {
    fc.assert(
      fc.property(start, fc.integer({ min: -40_000, max: 40_000 }), (from, n) => {
        const to = addDays(from, n);
        const judged = Temporal.PlainDate.from(from).add({ days: n });
        expect(to).toBe(judged.toString());
        expect(isoWeekday(to)).toBe(judged.dayOfWeek);
        expect(daysBetween(from, to)).toBe(n);
      }),
      runs,
    );
  });

  // luxon keeps its own reading of Intl's zone tables, so it judges the zone arithmetic from outside.
  test('the day of an instant in a zone, and the start of a day', () => {
    const zone = fc.constantFrom(
      'Europe/London',
      'Europe/Berlin',
      'America/New_York',
      'Australia/Lord_Howe',
      'Asia/Kathmandu',
      'Pacific/Apia',
    );
    const instant = fc.date({
      min: new Date('1990-01-01'),
      max: new Date('2040-01-01'),
      noInvalidDate: true,
    });
    fc.assert(
      fc.property(instant, zone, (at, z) => {
        const judged = DateTime.fromJSDate(at, { zone: z });
        const found: Day = dayInZone(at, z);
        expect(found).toBe(judged.toISODate());
        expect(startOfDay(found, z).getTime()).toBe(judged.startOf('day').toMillis());
      }),
      runs,
    );
  });
});
