import { describe, expect, it } from 'vitest';
import { monthsBefore } from '@/lib/keeping/rules/retention';

describe('the instant some months earlier', () => {
  it.each([
    ['2026-08-31T10:00:00.000Z', 6, '2026-02-28T10:00:00.000Z'],
    ['2028-08-31T10:00:00.000Z', 6, '2028-02-29T10:00:00.000Z'],
    ['2026-03-31T10:00:00.000Z', 1, '2026-02-28T10:00:00.000Z'],
    ['2026-01-15T10:00:00.000Z', 12, '2025-01-15T10:00:00.000Z'],
    ['2026-01-31T23:59:59.999Z', 2, '2025-11-30T23:59:59.999Z'],
  ])('%s less %i is %s', (now, months, expected) => {
    expect(monthsBefore(new Date(now), months).toISOString()).toBe(expected);
  });
});
