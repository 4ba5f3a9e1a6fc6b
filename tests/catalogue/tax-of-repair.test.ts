import { expect, test } from 'vitest';
import { taxRateProblem } from '@/lib/catalogue/rules/tax-of-repair';

// EN 16931-1:2017, BR-S-05, BR-Z-05, BR-E-05 (BR-O-05: no rate at all, kept here as 0).
test.each([
  ['S', 2000, true],
  ['S', 1, true],
  ['S', 0, false],
  ['Z', 0, true],
  ['E', 0, true],
  ['O', 0, true],
  ['Z', 500, false],
  ['E', 500, false],
  ['O', 500, false],
] as const)('%s at %i hundredths of a percent goes together: %s', (category, rateBps, goes) => {
  expect(taxRateProblem(category, rateBps) === null).toBe(goes);
});
