import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  addDays,
  compareDays,
  type Day,
  day,
  dayFromSerial,
  daysBetween,
  serialDay,
} from '@/lib/calendar/day';
import {
  addWorkingDays,
  isWorkingDay,
  nextWorkingDay,
  type WorkingCalendar,
  workingDaysBetween,
} from '@/lib/calendar/working';

const plain: WorkingCalendar = { weekend: [6, 7], closed: new Map() };
const christmas: WorkingCalendar = {
  weekend: [6, 7],
  closed: new Map([
    ['2026-12-25', 'Christmas Day'],
    ['2026-12-26', 'Boxing Day'],
    ['2026-12-28', 'Boxing Day (substitute day)'],
    ['2026-12-29', 'Stocktaking'],
  ]),
};

const aDay = fc
  .integer({ min: serialDay(day('2026-01-01')), max: serialDay(day('2027-12-31')) })
  .map(dayFromSerial);
const calendar = fc
  .record({
    weekend: fc.subarray([1, 2, 3, 4, 5, 6, 7], { maxLength: 6 }),
    closed: fc.array(aDay, { maxLength: 60 }),
  })
  .map(
    ({ weekend, closed }): WorkingCalendar => ({
      weekend,
      closed: new Map(closed.map((d) => [d, 'closed'])),
    }),
  );

const daysFrom = (from: Day, to: Day) =>
  Array.from({ length: daysBetween(from, to) + 1 }, (_, i) => addDays(from, i));

describe('working days', () => {
  test('a weekend, a holiday and a closing day are none', () => {
    expect(isWorkingDay(day('2026-12-24'), christmas)).toBe(true);
    for (const d of ['2026-12-25', '2026-12-27', '2026-12-29'])
      expect(isWorkingDay(day(d), christmas)).toBe(false);
    expect(isWorkingDay(day('2026-12-27'), { weekend: [5], closed: new Map() })).toBe(true);
  });

  test.each([
    ['2026-12-24', '2026-12-24'],
    ['2026-12-25', '2026-12-30'],
    ['2026-12-28', '2026-12-30'],
  ])('the next one from %s is %s', (from, to) => {
    expect(nextWorkingDay(day(from), christmas)).toBe(to);
  });

  test.each([
    ['2026-12-04', 0, '2026-12-04'],
    ['2026-12-04', 1, '2026-12-07'],
    ['2026-12-04', 3, '2026-12-09'],
    ['2026-12-05', 1, '2026-12-07'],
    ['2026-12-06', 0, '2026-12-06'],
    ['2026-12-24', 1, '2026-12-30'],
    ['2026-12-23', 3, '2026-12-31'],
  ])('from %s, number %i is %s', (from, n, to) => {
    expect(addWorkingDays(day(from), n, christmas)).toBe(to);
  });

  test('counting leaves the first day out and takes the last one in', () => {
    expect(workingDaysBetween(day('2026-12-04'), day('2026-12-09'), plain)).toBe(3);
    expect(workingDaysBetween(day('2026-12-04'), day('2026-12-06'), plain)).toBe(0);
    expect(workingDaysBetween(day('2026-12-09'), day('2026-12-04'), plain)).toBe(-3);
    expect(workingDaysBetween(day('2026-12-04'), day('2026-12-04'), plain)).toBe(0);
    expect(workingDaysBetween(day('2026-12-06'), day('2026-12-05'), plain)).toBe(0);
  });

  test('a year of Monday to Friday', () => {
    expect(workingDaysBetween(day('2025-12-31'), day('2026-12-31'), plain)).toBe(261); // by the calendar of 2026: 52 weeks and a Thursday
  });
});

describe('for any calendar and days', () => {
  test('the count is that of walking through the days one by one', () => {
    fc.assert(
      fc.property(aDay, aDay, calendar, (a, b, c) => {
        const [from, to] = compareDays(a, b) <= 0 ? [a, b] : [b, a];
        const walked = daysFrom(from, to)
          .slice(1)
          .filter((d) => isWorkingDay(d, c)).length;
        expect(workingDaysBetween(from, to, c)).toBe(walked);
        expect(workingDaysBetween(to, from, c)).toBe(0 - walked);
      }),
      { numRuns: 1000 },
    );
  });

  test('adding and counting undo each other, and what is added to ends on a working day', () => {
    fc.assert(
      fc.property(aDay, fc.integer({ min: 1, max: 60 }), calendar, (from, n, c) => {
        const to = addWorkingDays(from, n, c);
        expect(isWorkingDay(to, c)).toBe(true);
        expect(workingDaysBetween(from, to, c)).toBe(n);
      }),
      { numRuns: 1000 },
    );
  });

  test('no working day lies between a day and its next working day', () => {
    fc.assert(
      fc.property(aDay, calendar, (from, c) => {
        const next = nextWorkingDay(from, c);
        expect(daysFrom(from, next).filter((d) => isWorkingDay(d, c))).toEqual([next]);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('what is refused', () => {
  test('a calendar that never works ends in an error, not in a hang', () => {
    const never: WorkingCalendar = { weekend: [1, 2, 3, 4, 5, 6, 7], closed: new Map() };
    expect(() => nextWorkingDay(day('2026-01-01'), never)).toThrow(RangeError);
    expect(() => addWorkingDays(day('2026-01-01'), 1, never)).toThrow(RangeError);
  });

  test.each([
    ['below nought', -1],
    ['in parts', 0.5],
    ['that is no number', Number.NaN],
    ['without an end', Number.POSITIVE_INFINITY],
  ])('a count of days %s', (_name, n) => {
    expect(() => addWorkingDays(day('2026-01-01'), n, plain)).toThrow(`Not a count of working days: ${n}`);
  });
});
