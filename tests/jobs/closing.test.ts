import { expect, test } from 'vitest';
import { closesAfter } from '@/lib/jobs/rules/closing';

// Weeks of five working days: 20 of them are four weeks (arithmetic, no source).
test.each([
  [0, 14],
  [5, 14],
  [10, 14],
  [11, 16],
  [20, 28],
  [60, 84],
])('a parcel of at most %i working days on its way counts as delivered after %i days', (transit, days) => {
  expect(closesAfter(transit)).toBe(days);
});
