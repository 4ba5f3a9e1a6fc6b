import type { Page } from '@playwright/test';

/** The page on which staff write a changed price, line by line. */
export function changedPrice(page: Page) {
  return {
    reason: page.getByRole('textbox', { name: 'Why the price changes' }),
    line(place: number) {
      const line = page.getByRole('group', { name: `Line ${place}`, exact: true });
      return {
        what: line.getByRole('combobox', { name: /^What/ }),
        amount: line.getByRole('textbox', { name: /^Amount with tax/ }),
      };
    },
    keep: page.getByRole('button', { name: 'Keep this price' }),
  };
}
