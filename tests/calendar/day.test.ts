import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  addDays,
  compareDays,
  type Day,
  day,
  dayFromDate,
  dayFromSerial,
  dayInZone,
  dayOf,
  daysBetween,
  daysInMonth,
  dayToDate,
  isDay,
  isoWeekday,
  maxDay,
  minDay,
  partsOf,
  serialDay,
  startOfDay,
} from '@/lib/calendar/day';

const anyDay = fc
  .integer({ min: serialDay(day('0001-01-01')), max: serialDay(day('9999-12-31')) })
  .map(dayFromSerial);
const zones = [
  'Europe/London',
  'Europe/Berlin',
  'America/Sao_Paulo',
  'Australia/Lord_Howe',
  'Africa/Cairo',
  'Asia/Beirut',
];

describe('what is a day', () => {
  test.each(['2026-12-03', '2024-02-29', '2000-02-29', '0001-01-01', '9999-12-31'])('%s', (text) => {
    expect(isDay(text)).toBe(true);
    expect(day(text)).toBe(text);
  });

  test.each([
    '',
    '2025-02-29',
    '1900-02-29',
    '2026-02-30',
    '2026-04-31',
    '2026-13-01',
    '2026-00-10',
    '2026-01-00',
    '0000-01-01',
    '2026-1-1',
    '26-01-01',
    '20260101',
    '2026-01-01T00:00',
    ' 2026-01-01',
    '2026-01-01\n',
    '-2026-01-01',
    '+002026-01-01',
    '03/12/2026',
  ])('not %j', (text) => {
    expect(isDay(text)).toBe(false);
    expect(() => day(text)).toThrow(RangeError);
  });

  test('a day is taken apart and put together again', () => {
    fc.assert(
      fc.property(anyDay, (d) => {
        const { year, month, date } = partsOf(d);
        expect(dayOf(year, month, date)).toBe(d);
        expect(date).toBeLessThanOrEqual(daysInMonth(year, month));
        expect(dayFromSerial(serialDay(d))).toBe(d);
      }),
    );
  });
});

describe('arithmetic', () => {
  test('adding and counting undo each other', () => {
    fc.assert(
      fc.property(anyDay, anyDay, (a, b) => {
        expect(addDays(a, daysBetween(a, b))).toBe(b);
        expect(daysBetween(a, b)).toBe(0 - daysBetween(b, a));
      }),
    );
  });

  test('days compare in their order', () => {
    fc.assert(
      fc.property(anyDay, anyDay, (a, b) => {
        expect(Math.sign(compareDays(a, b))).toBe(Math.sign(daysBetween(b, a)));
        expect(daysBetween(minDay(a, b), maxDay(a, b))).toBe(Math.abs(daysBetween(a, b)));
      }),
    );
    const [early, middle, late] = [day('2026-01-31'), day('2026-02-01'), day('2026-10-01')];
    expect(maxDay(early, late, middle)).toBe(late);
    expect(minDay(late, early, middle)).toBe(early);
    expect(maxDay(early)).toBe(early);
  });

  test('weekdays run from Monday 1 to Sunday 7', () => {
    expect(isoWeekday(day('2026-12-03'))).toBe(4); // a Thursday
    expect(isoWeekday(day('1970-01-01'))).toBe(4);
    expect(isoWeekday(day('1969-12-29'))).toBe(1);
    expect(isoWeekday(day('2027-02-28'))).toBe(7);
  });

  test('fractions and days outside the calendar are refused', () => {
    expect(() => addDays(day('2026-01-01'), 0.5)).toThrow(RangeError);
    expect(addDays(day('0001-01-02'), -1)).toBe('0001-01-01');
    expect(addDays(day('9999-12-30'), 1)).toBe('9999-12-31');
    expect(() => addDays(day('2026-01-01'), -10_000_000)).toThrow(RangeError);
    expect(() => addDays(day('2026-01-01'), 1e12)).toThrow(RangeError);
    expect(() => addDays(day('9999-12-31'), 1)).toThrow(RangeError);
    expect(() => addDays(day('0001-01-01'), -1)).toThrow(RangeError);
    expect(() => addDays(day('2026-01-01'), Number.NaN)).toThrow(RangeError);
  });
});

describe('days and zones', () => {
  const instant = fc.date({ min: new Date('1990-01-01'), max: new Date('2040-01-01'), noInvalidDate: true });

  test('every instant lies inside the day that it is given', () => {
    fc.assert(
      fc.property(instant, fc.constantFrom(...zones), (at, zone) => {
        const d = dayInZone(at, zone);
        expect(startOfDay(d, zone).getTime()).toBeLessThanOrEqual(at.getTime());
        expect(startOfDay(addDays(d, 1), zone).getTime()).toBeGreaterThan(at.getTime());
      }),
      { numRuns: 2000 },
    );
  });

  test('the start of a day belongs to it and the moment before to the day before, whatever the clocks do', () => {
    const from = serialDay(day('2018-01-01'));
    const to = serialDay(day('2027-12-31'));
    for (const zone of zones) {
      for (let serial = from; serial <= to; serial += 1) {
        const d = dayFromSerial(serial);
        const start = startOfDay(d, zone);
        if (dayInZone(start, zone) !== d) expect.fail(`${d} in ${zone} starts on another day`);
        const before: Day = dayInZone(new Date(start.getTime() - 1), zone);
        if (before !== addDays(d, -1)) expect.fail(`${d} in ${zone} starts late`);
      }
    }
  });

  test('the zone decides the day', () => {
    const lateEvening = new Date('2026-06-30T23:30:00Z');
    expect(dayInZone(lateEvening, 'Europe/London')).toBe('2026-07-01');
    expect(dayInZone(lateEvening, 'UTC')).toBe('2026-06-30');
    expect(dayInZone(lateEvening, 'America/New_York')).toBe('2026-06-30');
  });

  test('an unknown zone and no instant are refused', () => {
    expect(() => dayInZone(new Date('2026-01-01'), 'Europe/Sandmouth')).toThrow(RangeError);
    expect(() => startOfDay(day('2026-01-01'), 'Europe/Sandmouth')).toThrow(RangeError);
    expect(() => dayInZone(new Date(Number.NaN), 'UTC')).toThrow(RangeError);
  });
});

describe('days in a date column', () => {
  test('go in and come out the same', () => {
    fc.assert(
      fc.property(anyDay, (d) => {
        expect(dayFromDate(dayToDate(d))).toBe(d);
        expect(dayToDate(d).toISOString()).toBe(`${d}T00:00:00.000Z`);
      }),
    );
  });

  test('an instant taken for a stored day is refused', () => {
    expect(() => dayFromDate(new Date('2026-01-01T00:00:00.001Z'))).toThrow(RangeError);
    expect(() => dayFromDate(new Date('2026-07-01T00:00:00+01:00'))).toThrow(RangeError);
    expect(() => dayFromDate(new Date(Number.NaN))).toThrow(RangeError);
  });
});
