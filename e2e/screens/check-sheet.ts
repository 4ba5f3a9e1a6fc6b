import type { Page } from '@playwright/test';

/** The check sheet at the bench: one card for each check, with every entry that was made. */
export function checkSheet(page: Page) {
  const cards = page
    .getByRole('main')
    .getByRole('listitem')
    .filter({ has: page.getByRole('heading') });
  const formOf = (check: string) => page.getByRole('group', { name: check });
  const enter = (check: string) =>
    formOf(check)
      .getByRole('button', { name: /^Enter/ })
      .click();
  return {
    card: (check: string) => cards.filter({ has: page.getByRole('heading', { name: check }) }),
    async reading(check: string, value: string) {
      await formOf(check).getByRole('textbox', { name: 'Reading' }).fill(value);
      await enter(check);
    },
    async tick(check: string) {
      await formOf(check).getByRole('radio', { name: 'Yes, it passes' }).check();
      await enter(check);
    },
    async choose(check: string, seen: string) {
      await formOf(check).getByRole('radio', { name: seen, exact: true }).check();
      await enter(check);
    },
    probe: (check: string) =>
      cards
        .filter({ has: page.getByRole('heading', { name: check }) })
        .getByRole('link', { name: 'Probe the connector' })
        .click(),
    move: (label: string) => page.getByRole('button', { name: label, exact: true }),
  };
}
