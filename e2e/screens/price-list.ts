import type { Page } from '@playwright/test';

export function priceList(page: Page) {
  return {
    open: () => page.goto('/prices'),
    found: page.getByRole('status'),
    async search(words: string) {
      await page.getByRole('searchbox', { name: 'Maker, model or what is wrong' }).fill(words);
      await page.getByRole('button', { name: 'Search' }).click();
    },
    /** Leads to the prices of one kind of device. */
    device: (name: string | RegExp) =>
      page.getByRole('navigation', { name: 'Prices by device' }).getByRole('link', { name }),
    /** The entry of one model on the list. */
    model: (name: string) => page.getByRole('region', { name }),
    openModel: (name: string) => page.getByRole('link', { name, exact: true }).click(),
    /** One repair on a model's own page, with price, time and cover. */
    repair: (name: string) =>
      page.getByRole('listitem').filter({ has: page.getByRole('heading', { name, exact: true }) }),
    book: (repair: string) =>
      page.getByRole('link', { name: `Book this repair: ${repair}`, exact: true }).click(),
  };
}
