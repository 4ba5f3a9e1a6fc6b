import { expect, test } from 'vitest';
import { checksOf, provedSheets, sheetNames } from '@/lib/bench/rules/job-sheets';

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

test('one sheet that asks the same twice asks it twice', () => {
  const twice = [check('Soak, first hour'), check('Soak, first hour')];
  expect(checksOf({ repair: { name: 'Socket' }, sheet: sheet(1, twice), besides: [] })).toHaveLength(2);
});
