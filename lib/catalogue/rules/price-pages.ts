import { pageOf } from '@/lib/numbers/page-of';

/** Models on one page of prices: a page that a phone takes at once, whatever the length of the list. */
export const MODELS_PER_PAGE = 30;

/**
 * One page of a price list, families and models in the order given; a family that a page cuts goes on on the next one.
 * Pages count from 1. A page past the end is the last one, one before the first the first; an empty list has one page.
 * Example: families of 20 and 25 models, page 2 of 30: the second family's last 15, of 2 pages.
 */
export function pageOfModels<M, F extends { models: readonly M[] }>(
  families: readonly F[],
  asked: number,
  size: number = MODELS_PER_PAGE,
): { families: (Omit<F, 'models'> & { models: M[] })[]; page: number; pages: number } {
  const total = families.reduce((sum, family) => sum + family.models.length, 0);
  const { page, pages, skip: from } = pageOf(total, { page: asked, size });
  let before = 0;
  const shown = families.map((family) => {
    const models = family.models.slice(Math.max(0, from - before), Math.max(0, from + size - before));
    before += family.models.length;
    return { ...family, models };
  });
  return { families: shown.filter((family) => family.models.length > 0), page, pages };
}
