import { describe, expect, test } from 'vitest';
import { pageOfModels } from '@/lib/catalogue/rules/price-pages';

const family = (slug: string, count: number) => ({
  slug,
  models: Array.from({ length: count }, (_, i) => `${slug}-${i + 1}`),
});
const list = [family('recorders', 20), family('pedals', 25)];

describe('a page of the price list', () => {
  test('the worked example: the rest of a family that the first page cut', () => {
    const { families, page, pages } = pageOfModels(list, 2, 30);
    expect({ page, pages }).toEqual({ page: 2, pages: 2 });
    expect(families.map(({ slug, models }) => [slug, models.length, models[0]])).toEqual([
      ['pedals', 15, 'pedals-11'],
    ]);
  });

  test('all pages together are the list, each model once', () => {
    const seen = [1, 2, 3, 4, 5, 6, 7].flatMap((page) =>
      pageOfModels(list, page, 7).families.flatMap((each) => each.models),
    );
    expect(seen).toEqual(list.flatMap((each) => each.models));
  });

  test('past the end is the last page, nonsense the first, and nothing is one page', () => {
    expect(pageOfModels(list, 99, 30).page).toBe(2);
    expect(pageOfModels(list, Number.NaN, 30).page).toBe(1);
    expect(pageOfModels(list, -3, 30).page).toBe(1);
    expect(pageOfModels([], 1)).toEqual({ families: [], page: 1, pages: 1 });
    expect(() => pageOfModels(list, 1, 0)).toThrow(RangeError);
  });
});
