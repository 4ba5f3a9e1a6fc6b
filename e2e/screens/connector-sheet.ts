import type { Page } from '@playwright/test';

/** A connector at the bench: its drawing, and the list with every probe. */
export function connectorSheet(page: Page) {
  const probe = (what: string) => page.getByRole('group', { name: what, exact: true });
  return {
    heading: page.getByRole('heading', { level: 1 }),
    drawing: page.getByRole('region', { name: /^Pins of/ }).last(),
    async beginRight() {
      await page.getByRole('link', { name: 'Begin with every probe marked right' }).click();
      // The page that begins so is another one: what is pressed before it is there is pressed on this one.
      await page.waitForURL(/[?&]start=right/);
    },
    answer: (what: string, read: string) => probe(what).getByRole('radio', { name: read }),
    async mark(what: string, read: string) {
      await probe(what).getByRole('radio', { name: read }).check();
    },
    enter: () => page.getByRole('button', { name: 'Enter the connector sheet' }).click(),
    problem: page.getByText('Give an answer to every probe.').first(),
  };
}
