import { describe, expect, it } from 'vitest';
import { pageOf } from '@/lib/numbers/page-of';

describe('the page of a list', () => {
  it.each([
    ['the first', 60, 1, { page: 1, skip: 0 }],
    ['the last', 60, 3, { page: 3, skip: 50 }],
    ['the last where one past the end is asked for', 60, 99, { page: 3, skip: 50 }],
    ['the last of one that ends with a whole page', 50, 3, { page: 2, skip: 25 }],
    ['the first for nonsense', 60, Number.NaN, { page: 1, skip: 0 }],
    ['the first before the first', 60, -4, { page: 1, skip: 0 }],
    ['the first of nothing', 0, 7, { page: 1, skip: 0, pages: 1 }],
  ])('is %s', (_name, total, page, shown) => {
    expect(pageOf(total, { page, size: 25 })).toMatchObject({ ...shown, take: 25 });
  });

  it('needs a size', () => {
    expect(() => pageOf(60, { page: 1, size: 0 })).toThrow(RangeError);
  });
});
