import { expect, test } from 'vitest';
import type { CheckCells } from '@/lib/catalogue/rules/check-file';
import { changeCounts, lookOf } from '@/lib/catalogue/rules/file-look';
import { FIRST_CHECK } from '@/lib/catalogue/rules/first-check';
import { planChecks } from '@/lib/catalogue/rules/plan-checks';

const settings = { currency: 'GBP', pricesIncludeTax: false };
const none = { families: 0, models: 0, repairs: 0 };

test('a fault of the catalogue stands under the heading of the workshop’s own list', () => {
  const problems = [
    { row: 4, column: 'price' as const, message: 'Enter an amount' },
    { row: 5, column: null, message: 'There is text behind the last column' },
  ];
  const plan = { families: [], models: [], repairs: [], unchanged: none, problems };
  expect(lookOf({ kind: 'catalogue', plan }, settings)).toMatchObject({
    counts: [{ what: 'Families' }, { what: 'Models' }, { what: 'Repairs' }],
    faults: [
      { row: 4, head: 'Price without tax' },
      { row: 5, head: null },
    ],
  });
});

test('a sheet with one check off, one new and one changed counts once, and each is a line', () => {
  const cells = (place: string, label: string, help: string): CheckCells => ({
    modelAddress: 'm',
    repairAddress: 'r',
    place,
    kind: 'tick',
    label,
    help,
    unit: '',
    low: '',
    high: '',
    choices: '',
    passing: '',
    connector: '',
    caution: '',
    lesson: '',
  });
  const checks = ['Off', 'Stays'].map((label) => ({ ...FIRST_CHECK, label }));
  const plan = planChecks({
    rows: [
      { row: 2, cells: cells('1', 'Stays', 'Look twice') },
      { row: 3, cells: cells('2', 'New', '') },
      { row: 4, cells: cells('3', 'New too', '') },
    ],
    known: [{ repairId: 'id', modelAddress: 'm', repairAddress: 'r', version: 1, checks }],
    connectors: [],
  });
  const look = lookOf({ kind: 'checks', plan }, settings);
  expect(changeCounts(look)).toEqual({ added: 0, changed: 1 });
  expect(look.lines.map(({ row, name, change, address }) => [row, name, change, address])).toEqual([
    [2, 'Stays', 'changed', 'm#r'],
    [3, 'New', 'added', 'm#r'],
    [4, 'New too', 'added', 'm#r'],
    [null, 'Off', 'off', 'm#r'],
  ]);
  expect(look.lines[0]?.fields).toEqual([{ head: 'How to do it', before: '', after: 'Look twice' }]);
});
