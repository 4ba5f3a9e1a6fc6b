import type { Page } from '@playwright/test';
import { docket } from './docket';

/** Where a number alone leads: the stage and nothing else. */
export function track(page: Page) {
  const number = page.getByRole('textbox', { name: 'Job number' });
  return {
    open: () => page.goto('/track'),
    number,
    docket: docket(page),
    async lookUp(text: string) {
      await number.fill(text);
      await page.getByRole('button', { name: 'Show the stage' }).click();
    },
  };
}
