import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  addDays,
  day,
  dayFromSerial,
  dayInZone,
  daysBetween,
  daysInMonth,
  partsOf,
  serialDay,
  startOfDay,
} from '@/lib/calendar/day';
import { addPeriod, describePeriod, isPeriod, isWithinYears } from '@/lib/calendar/period';

const start = fc
  .integer({ min: serialDay(day('1990-01-01')), max: serialDay(day('2060-12-31')) })
  .map(dayFromSerial);
const months = fc.integer({ min: 1, max: 120 });

describe('what is a period', () => {
  test.each(['P90D', 'P12M', 'P1Y', 'P2W', 'P1Y6M', 'P1Y2M3W4D', 'P0Y12M', 'P012M'])('%s', (text) => {
    expect(isPeriod(text)).toBe(true);
  });

  test.each([
    '',
    'P',
    'P0D',
    'P0Y0M',
    '90D',
    'P90',
    'p90d',
    'P1.5M',
    'P1,5M',
    '-P1D',
    'P-1D',
    'PT36H',
    'P1DT2H',
    'P1M1Y',
    'P1D1D',
    ' P1D',
    'P1D\n',
    'P9999999D',
  ])('not %j', (text) => {
    expect(isPeriod(text)).toBe(false);
    expect(() => addPeriod(day('2026-01-01'), text)).toThrow(RangeError);
    expect(() => describePeriod(text)).toThrow(RangeError);
  });

  // 366 x 100 days are 5,228 weeks and 4 days.
  test.each([
    ['P100Y', 'P101Y'],
    ['P1200M', 'P1201M'],
    ['P5228W4D', 'P5228W5D'],
    ['P36600D', 'P36601D'],
    ['P99Y12M', 'P99Y12M1D'],
  ])('%s is within 100 years, and %s is not', (within, past) => {
    expect(isWithinYears(within, 100)).toBe(true);
    expect(isWithinYears(past, 100)).toBe(false);
  });

  test('a period that leaves the calendar is refused', () => {
    expect(isPeriod('P9000Y')).toBe(true);
    expect(() => addPeriod(day('2026-01-01'), 'P9000Y')).toThrow(RangeError);
  });
});

describe('the last day of a period', () => {
  test('months end on the same date, or on the last day of a month too short for it', () => {
    fc.assert(
      fc.property(start, months, (from, n) => {
        const last = partsOf(addPeriod(from, `P${n}M`));
        const first = partsOf(from);
        expect(last.year * 12 + last.month).toBe(first.year * 12 + first.month + n);
        expect(last.date).toBe(Math.min(first.date, daysInMonth(last.year, last.month)));
      }),
      { numRuns: 2000 },
    );
  });

  test('a year is twelve months, a week seven days', () => {
    fc.assert(
      fc.property(start, fc.integer({ min: 1, max: 50 }), (from, n) => {
        expect(addPeriod(from, `P${n}Y`)).toBe(addPeriod(from, `P${n * 12}M`));
        expect(addPeriod(from, `P${n}W`)).toBe(addPeriod(from, `P${n * 7}D`));
        expect(addPeriod(from, `P${n}D`)).toBe(addDays(from, n));
      }),
    );
  });

  test('a longer term never ends earlier, and a later start never ends earlier', () => {
    fc.assert(
      fc.property(start, months, fc.nat({ max: 400 }), (from, n, later) => {
        expect(daysBetween(addPeriod(from, `P${n}M`), addPeriod(from, `P${n + 1}M`))).toBeGreaterThan(0);
        expect(
          daysBetween(addPeriod(from, `P${n}M`), addPeriod(addDays(from, later), `P${n}M`)),
        ).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 1000 },
    );
  });

  test('it is counted from the start, so a clamped month does not shorten the ones after it', () => {
    fc.assert(
      fc.property(start, months, months, (from, a, b) => {
        const whole = addPeriod(from, `P${a + b}M`);
        const chained = addPeriod(addPeriod(from, `P${a}M`), `P${b}M`);
        const lost = daysBetween(chained, whole);
        expect(lost).toBeGreaterThanOrEqual(0);
        expect(lost).toBeLessThanOrEqual(3);
        if (partsOf(from).date <= 28) expect(lost).toBe(0);
      }),
      { numRuns: 1000 },
    );
  });

  test('a change of the clocks moves no end: the day is the same in every zone, from any hour of the start', () => {
    const zone = fc.constantFrom(
      'Europe/London',
      'Europe/Berlin',
      'America/New_York',
      'Australia/Lord_Howe',
      'America/Sao_Paulo',
      'UTC',
    );
    fc.assert(
      fc.property(start, fc.nat({ max: 999_999 }), zone, months, (from, share, z, n) => {
        const opens = startOfDay(from, z).getTime();
        const closes = startOfDay(addDays(from, 1), z).getTime();
        const handedOver = new Date(opens + Math.floor(((closes - opens) * share) / 1_000_000));
        for (const period of [`P${n}M`, `P${n}D`]) {
          const last = addPeriod(dayInZone(handedOver, z), period);
          expect(last).toBe(addPeriod(from, period));
          const end = startOfDay(addDays(last, 1), z);
          expect(dayInZone(new Date(end.getTime() - 1), z)).toBe(last);
          expect(dayInZone(end, z)).toBe(addDays(last, 1));
        }
      }),
      { numRuns: 2000 },
    );
  });

  // What must not be done: ninety times 24 hours from Berlin 00:30 before the clocks go back end on the day before.
  test('adding hours to an instant would lose a day where this does not', () => {
    const handedOver = new Date('2026-09-01T00:30:00+02:00');
    const byHours = dayInZone(new Date(handedOver.getTime() + 90 * 24 * 3_600_000), 'Europe/Berlin');
    expect(byHours).toBe('2026-11-29');
    expect(addPeriod(dayInZone(handedOver, 'Europe/Berlin'), 'P90D')).toBe('2026-11-30');
  });
});

describe('a period in words', () => {
  test.each([
    ['P12M', '12 months'],
    ['P1M', '1 month'],
    ['P90D', '90 days'],
    ['P1D', '1 day'],
    ['P1Y', '1 year'],
    ['P2Y', '2 years'],
    ['P2W', '2 weeks'],
    ['P1Y6M', '1 year and 6 months'],
    ['P1Y2M3W4D', '1 year, 2 months, 3 weeks and 4 days'],
    ['P0Y12M', '12 months'],
  ])('%s is %s', (period, words) => {
    expect(describePeriod(period)).toBe(words);
  });
});
