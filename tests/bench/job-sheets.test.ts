import { expect, test } from 'vitest';
import { checksOf, plannedMinutes, provedSheets, sheetNames } from '@/lib/bench/rules/job-sheets';

const check = (label: string, more: { kind?: string; low?: number | null; high?: number | null } = {}) => ({
  label,
  kind: 'tick',
  unit: null,
  low: null,
  high: null,
  choices: [],
  passing: [],
  ...more,
});
const sheet = (version: number, checks: ReturnType<typeof check>[]) => ({ version, checks });

test('a unit passes the checks of every repair that is done on it, those of its own repair first', () => {
  const job = {
    repair: { name: 'Socket' },
    sheet: sheet(2, [check('Plug holds')]),
    besides: [{ sheet: { ...sheet(1, [check('No dead pixels')]), repair: { name: 'Display' } } }],
  };
  expect(checksOf(job).map(({ label }) => label)).toEqual(['Plug holds', 'No dead pixels']);
  expect(sheetNames(provedSheets(job))).toBe('Socket, version 2; Display, version 1');
});

test('what two sheets ask alike is asked once, and stands with the first', () => {
  const job = {
    repair: { name: 'Socket' },
    sheet: sheet(1, [check('Plug holds'), check('Case closed')]),
    besides: [
      {
        sheet: { ...sheet(1, [check('Case closed'), check('No dead pixels')]), repair: { name: 'Display' } },
      },
    ],
  };
  expect(provedSheets(job).map(({ checks }) => checks.map(({ label }) => label))).toEqual([
    ['Plug holds', 'Case closed'],
    ['No dead pixels'],
  ]);
});

test('checks of one name and other limits are two', () => {
  const narrow = check('Supply voltage', { kind: 'reading', low: 4.9, high: 5.1 });
  const wide = check('Supply voltage', { kind: 'reading', low: 4.75, high: 5.25 });
  const job = {
    repair: { name: 'Socket' },
    sheet: sheet(1, [narrow]),
    besides: [{ sheet: { ...sheet(1, [wide]), repair: { name: 'Display' } } }],
  };
  expect(checksOf(job)).toEqual([narrow, wide]);
});

test.each([
  { label: 'Other words' },
  { kind: 'choice' },
  { unit: 'mV' },
  { low: 4.75 },
  { high: 5.25 },
  { choices: ['yes', 'no', 'unclear'] },
  { passing: ['no'] },
  { pinTable: { id: 'usb-c' } },
])('a check that differs from another in %j alone is asked too', (other) => {
  const one = {
    ...check('Supply'),
    unit: 'V',
    low: 4.9,
    high: 5.1,
    choices: ['yes', 'no'],
    passing: ['yes'],
  };
  const asked = (two: object) =>
    checksOf({
      repair: { name: 'Socket' },
      sheet: { version: 1, checks: [one] },
      besides: [{ sheet: { version: 1, repair: { name: 'Display' }, checks: [{ ...one, ...two }] } }],
    });
  expect(asked({})).toHaveLength(1);
  expect(asked(other)).toHaveLength(2);
});

test('the minutes planned are those of all that is done', () => {
  const beside = (minutes: number) => ({ sheet: { repair: { minutes } } });
  expect(plannedMinutes({ repair: { minutes: 60 }, besides: [] })).toBe(60);
  expect(plannedMinutes({ repair: { minutes: 60 }, besides: [beside(20), beside(15)] })).toBe(95);
});

test('one sheet that asks the same twice asks it twice', () => {
  const twice = [check('Soak, first hour'), check('Soak, first hour')];
  expect(checksOf({ repair: { name: 'Socket' }, sheet: sheet(1, twice), besides: [] })).toHaveLength(2);
});
