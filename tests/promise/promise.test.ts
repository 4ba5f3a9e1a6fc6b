import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, type Day, day } from '@/lib/calendar/day';
import { addWorkingDays, type WorkingCalendar } from '@/lib/calendar/working';
import { backtest, shareKept } from '@/lib/promise/rules/backtest';
import { benchDays, queueMinutes } from '@/lib/promise/rules/bench-days';
import { type BenchJob, nearestRank, promiseFor } from '@/lib/promise/rules/promise';

const calendar: WorkingCalendar = {
  weekend: [6, 7],
  closed: new Map([['2026-08-31', 'Summer bank holiday']]),
};
const settings = { calendar, capacityMinutesDay: 360 };
const monday = day('2026-11-02');
const tuesday = addDays(monday, 1);
const wednesday = addDays(monday, 2);
const friday = addDays(monday, 4);

const job: BenchJob = {
  repairId: 'usb-c',
  familyId: 'recorders',
  minutes: 60,
  statedDays: 5,
  arrivedOn: monday,
  readyOn: friday,
  waited: [],
};

/** Jobs that arrived one by one long before each other, so that none found a queue. */
function history(days: readonly number[], change: Partial<BenchJob> = {}): BenchJob[] {
  return days.map((count, i) => {
    const arrivedOn = addDays(day('2025-01-06'), i * 28);
    return { ...job, arrivedOn, readyOn: addWorkingDays(arrivedOn, count, calendar), ...change };
  });
}

const oneToTwelve = Array.from({ length: 12 }, (_, i) => i + 1);
const asked = { repairId: 'usb-c', familyId: 'recorders', statedDays: 5, on: monday };

describe('bench days', () => {
  test('are working days, the day of arrival not counted', () => {
    expect(benchDays(job, calendar)).toBe(4);
    expect(benchDays({ ...job, readyOn: addDays(monday, 7) }, calendar)).toBe(5);
    expect(benchDays({ ...job, arrivedOn: day('2026-08-28'), readyOn: day('2026-09-01') }, calendar)).toBe(1);
  });

  test('leave out days that waited on the customer', () => {
    expect(benchDays({ ...job, waited: [{ from: tuesday, to: wednesday }] }, calendar)).toBe(3);
  });

  test('take days that two waits share off once', () => {
    const waited = [
      { from: tuesday, to: friday },
      { from: monday, to: wednesday },
      { from: tuesday, to: wednesday },
    ];
    expect(benchDays({ ...job, waited }, calendar)).toBe(0);
  });

  test('look at a wait only between arrival and ready', () => {
    const waited = [
      { from: addDays(monday, -10), to: tuesday },
      { from: addDays(monday, 3), to: null },
    ];
    expect(benchDays({ ...job, waited }, calendar)).toBe(2);
  });

  test('of a job that is not ready are refused', () => {
    expect(() => benchDays({ ...job, readyOn: null }, calendar)).toThrow(RangeError);
  });
});

test('the queue is what is here and does not wait on a customer', () => {
  const open = { ...job, readyOn: null };
  const jobs = [
    open,
    { ...open, minutes: 90 },
    { ...open, minutes: 30, waited: [{ from: monday, to: null }] },
    { ...open, minutes: 45, waited: [{ from: monday, to: tuesday }] },
    { ...open, minutes: 1000, arrivedOn: friday },
    { ...open, minutes: 500, readyOn: wednesday },
    // As the day begins: ready in the course of it, asked in the course of it, and still waiting for the answer that comes then.
    { ...open, minutes: 7, readyOn: friday },
    { ...open, minutes: 11, waited: [{ from: friday, to: null }] },
    { ...open, minutes: 20, waited: [{ from: monday, to: friday }] },
  ];
  expect(queueMinutes(jobs, friday)).toBe(60 + 90 + 45 + 7 + 11);
});

describe('the promise', () => {
  test('is what four of five such jobs needed', () => {
    expect(promiseFor(asked, history(oneToTwelve), settings)).toEqual({
      on: addWorkingDays(monday, 10, calendar),
      days: 10,
      basis: 'repair',
      jobs: 12,
      queueDays: 0,
    });
  });

  test('is longer by the queue that is here', () => {
    const queue = [{ ...job, arrivedOn: addDays(monday, -3), readyOn: null, minutes: 400 }];
    expect(promiseFor(asked, [...history(oneToTwelve), ...queue], settings)).toMatchObject({
      days: 11,
      queueDays: 1,
    });
  });

  test('does not count a queue twice that the finished jobs had to wait for', () => {
    const busy = history([5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5]).flatMap((each) => [
      each,
      { ...each, repairId: 'other', familyId: 'other', arrivedOn: addDays(each.arrivedOn, -1), minutes: 720 },
    ]);
    expect(promiseFor(asked, busy, settings).days).toBe(3);
  });

  test.each([
    { name: 'the family when the repair has too few', change: { repairId: 'other' }, basis: 'family' },
    {
      name: 'all when the family has too few',
      change: { repairId: 'other', familyId: 'other' },
      basis: 'all',
    },
  ])('takes $name', ({ change, basis }) => {
    expect(promiseFor(asked, history(oneToTwelve, change), settings)).toMatchObject({ basis, days: 10 });
  });

  test.each([
    { name: 'jobs of other repairs', change: { repairId: 'other' }, days: 14 },
    { name: 'jobs of the same repair', change: {}, days: 10 },
  ])(
    'from $name that were shorter than the catalogue states is $days days, and the queue',
    ({ change, days }) => {
      const jobs = history(oneToTwelve, change);
      const queue = [{ ...job, arrivedOn: addDays(monday, -3), readyOn: null, minutes: 400 }];
      const stated = { ...asked, statedDays: 14 };
      expect(promiseFor(stated, jobs, settings).days).toBe(days);
      expect(promiseFor(stated, [...jobs, ...queue], settings)).toMatchObject({
        days: days + 1,
        queueDays: 1,
      });
    },
  );

  test('with eleven finished jobs is the estimate by hand', () => {
    const answer = promiseFor(asked, history(oneToTwelve.slice(1)), settings);
    expect(answer).toEqual({
      on: addWorkingDays(monday, 5, calendar),
      days: 5,
      basis: 'by-hand',
      jobs: 0,
      queueDays: 0,
    });
  });

  test('does not know jobs that were ready later', () => {
    const on = day('2025-02-01');
    expect(promiseFor({ ...asked, on }, history(oneToTwelve), settings).basis).toBe('by-hand');
  });

  test('knows a job that is ready on that very day', () => {
    const jobs = history(oneToTwelve);
    const on = jobs.at(-1)?.readyOn ?? monday;
    expect(promiseFor({ ...asked, on }, jobs, settings).basis).toBe('repair');
    expect(promiseFor({ ...asked, on: addDays(on, -1) }, jobs, settings).basis).toBe('by-hand');
  });

  test('is kept to the days that a quote named, whatever such jobs needed and whoever is before it', () => {
    const jobs = [
      ...history(oneToTwelve),
      { ...job, arrivedOn: addDays(monday, -3), readyOn: null, minutes: 400 },
    ];
    expect(promiseFor({ ...asked, quotedDays: 3 }, jobs, settings)).toEqual({
      on: addWorkingDays(monday, 3, calendar),
      days: 3,
      basis: 'quoted',
      jobs: 0,
      queueDays: 0,
    });
    expect(promiseFor({ ...asked, quotedDays: null }, jobs, settings).basis).toBe('repair');
  });

  test('is never less than a working day', () => {
    expect(promiseFor(asked, history(oneToTwelve.map(() => 0)), settings).days).toBe(1);
    expect(promiseFor({ ...asked, statedDays: 0 }, [], settings).days).toBe(1);
  });

  test.each([
    { quantile: 0, capacityMinutesDay: 360 },
    { quantile: 1.1, capacityMinutesDay: 360 },
    { quantile: 0.8, capacityMinutesDay: 0 },
  ])('at $quantile with $capacityMinutesDay minutes a day is refused', (broken) => {
    expect(() => promiseFor(asked, [], { calendar, ...broken })).toThrow(RangeError);
  });
});

describe('nearest rank', () => {
  test.each([
    [0.5, 6],
    [0.8, 10],
    [0.9, 11],
    [1, 12],
    [0.01, 1],
  ])('%d of 1 to 12 is %d', (quantile, expected) => {
    expect(nearestRank(oneToTwelve, quantile)).toBe(expected);
  });

  test('at least the share asked for lies at or below it, and less than that strictly below', () => {
    const values = fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 1, maxLength: 60 });
    fc.assert(
      fc.property(values, fc.integer({ min: 1, max: 100 }), (list, percent) => {
        const value = nearestRank(list, percent / 100);
        const atOrBelow = list.filter((each) => each <= value).length;
        const below = list.filter((each) => each < value).length;
        expect(atOrBelow * 100).toBeGreaterThanOrEqual(percent * list.length - 1e-6);
        expect(below * 100).toBeLessThan(percent * list.length + 1e-6);
      }),
    );
  });

  test('of nothing is refused', () => {
    expect(() => nearestRank([], 0.8)).toThrow(RangeError);
  });
});

describe('the backtest', () => {
  const late = { ...settings, today: day('2028-01-03') };

  test('promises each job from what was known on its arrival, and counts what was kept', () => {
    const jobs = history([...oneToTwelve, 10, 11]);
    const [result] = backtest(jobs, late, [0.8]);
    expect(result).toEqual({
      quantile: 0.8,
      counted: { promises: 2, kept: 1 },
      byHand: { promises: 12, kept: 5 },
      notDue: 0,
    });
  });

  test('a customer who takes long to answer breaks no promise', () => {
    const first = history(oneToTwelve.map(() => 2));
    const arrivedOn: Day = addDays(day('2025-01-06'), 12 * 28);
    const slow = {
      ...job,
      arrivedOn,
      readyOn: addWorkingDays(arrivedOn, 12, calendar),
      waited: [{ from: arrivedOn, to: addWorkingDays(arrivedOn, 10, calendar) }],
    };
    expect(backtest([...first, slow], late, [0.8])[0]?.counted).toEqual({ promises: 1, kept: 1 });
  });

  test('counts a job that is still here as broken from the day after its promise, and not before', () => {
    const jobs = history(oneToTwelve.map(() => 2));
    const here = { ...job, arrivedOn: day('2026-11-02'), readyOn: null };
    const on = (today: Day) => backtest([...jobs, here], { ...settings, today }, [0.8])[0];
    expect(on(wednesday)).toMatchObject({ counted: { promises: 0, kept: 0 }, notDue: 1 });
    expect(on(addDays(wednesday, 1))).toMatchObject({ counted: { promises: 1, kept: 0 }, notDue: 0 });
  });

  test('does not count a quick job before its promised day, so that quick ones do not flatter', () => {
    const jobs = history(oneToTwelve.map(() => 8));
    const quick = { ...job, arrivedOn: monday, readyOn: tuesday };
    const on = (today: Day) => backtest([...jobs, quick], { ...settings, today }, [0.8])[0];
    expect(on(wednesday)).toMatchObject({ counted: { promises: 0 }, notDue: 1 });
    expect(on(addDays(monday, 14))).toMatchObject({ counted: { promises: 1, kept: 1 }, notDue: 0 });
  });

  test('promises only the latest jobs again, from all that were known', () => {
    const jobs = history([...oneToTwelve, 10, 11]);
    expect(backtest(jobs, { ...late, latest: 2 }, [0.8])[0]).toMatchObject({
      counted: { promises: 2, kept: 1 },
      byHand: { promises: 0 },
    });
  });

  test('keeps no fewer at a higher quantile', () => {
    const days = fc.array(fc.integer({ min: 0, max: 20 }), { minLength: 13, maxLength: 30 });
    fc.assert(
      fc.property(days, (counts) => {
        const kept = backtest(history(counts), late, [0.5, 0.8, 0.95]).map((each) => each.counted.kept);
        expect(kept).toEqual([...kept].sort((a, b) => a - b));
      }),
      { numRuns: 30 },
    );
  });

  test('has no share where no promise was made', () => {
    expect(shareKept({ promises: 0, kept: 0 })).toBeNull();
    expect(shareKept({ promises: 4, kept: 3 })).toBe(0.75);
  });
});
