import { describe, expect, test } from 'vitest';
import { growthFigure, medianRatio } from '@/lib/commands/bench/figures';
import { isWrite } from '@/lib/commands/bench/recorded-statements';

describe('figures of the bench', () => {
  test('a ratio is the median of its pairs, not of its sides', () => {
    // The second pair met a moment of load, which fell on both of its sides.
    expect(medianRatio([10, 200, 12], [5, 100, 3])).toBe(2);
  });

  test('growth is judged at the slow end, and told at both', () => {
    const few = Array.from({ length: 100 }, () => 10);
    const many = few.map((ms, i) => (i < 90 ? ms : 20));
    const figure = growthFigure('page', { few, many, statements: 5 }, { growth: 1.3, statements: 6 });
    expect(figure.reached).toBe(false);
    expect(figure.value).toContain('p50 1.00 x, p95 2.00 x; 5 sent');
    expect(growthFigure('page', { few, many: few, statements: 7 }, { statements: 6 }).reached).toBe(false);
    expect(growthFigure('page', { few, many: few, statements: 6 }, { statements: 6 }).reached).toBe(true);
    expect(growthFigure('page', { few, many }).reached).toBeUndefined();
  });

  test('too many statements are a fault on any machine, a slow moment is none', () => {
    const few = [10, 10];
    const many = [40, 40];
    const most = { growth: 1.3, statements: 6 };
    expect(growthFigure('page', { few, many, statements: 6 }, most)).toMatchObject({
      reached: false,
      isFault: false,
    });
    expect(growthFigure('page', { few, many: few, statements: 7 }, most)).toMatchObject({ isFault: true });
  });

  test.each([
    ['INSERT INTO "job" ("id") VALUES ($1)', true],
    ['WITH n AS (UPDATE "counter" SET "last" = "last" + 1 RETURNING "last") SELECT "last" FROM n', true],
    ['WITH found AS (SELECT "id" FROM "job" FOR UPDATE) SELECT "id" FROM found', false],
    ['SELECT "id" FROM "job" FOR UPDATE', false],
  ])('%s is a write: %s', (text, writes) => {
    expect(isWrite({ text, values: [] })).toBe(writes);
  });
});
