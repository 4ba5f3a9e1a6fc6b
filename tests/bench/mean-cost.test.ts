import { expect, it } from 'vitest';
import { meanCost } from '@/lib/bench/rules/mean-cost';

it.each([
  ['4 at 210 and 8 at 240', { inStock: 4, unitCostMinor: 210 }, { quantity: 8, unitCostMinor: 240 }, 230],
  [
    'none left, so what comes counts alone',
    { inStock: 0, unitCostMinor: 210 },
    { quantity: 3, unitCostMinor: 240 },
    240,
  ],
  [
    'a half goes up: 1 at 180 and 1 at 181',
    { inStock: 1, unitCostMinor: 180 },
    { quantity: 1, unitCostMinor: 181 },
    181,
  ],
  [
    'a third goes down: 2 at 100 and 1 at 101',
    { inStock: 2, unitCostMinor: 100 },
    { quantity: 1, unitCostMinor: 101 },
    100,
  ],
])('%s', (_name, lot, more, expected) => {
  expect(meanCost(lot, more)).toBe(expected);
});
