import { expect, type Page } from '@playwright/test';
import { docket } from './docket';

/** The list of jobs, sought by what stands on a unit. */
export function jobList(page: Page) {
  return {
    /** Opens the newest job of the unit with this serial; its number. */
    async openUnit(serial: string): Promise<string> {
      await page.goto(`/workshop/jobs?q=${encodeURIComponent(serial)}`);
      await page.getByRole('main').getByRole('link', { name: /^J-/ }).first().click();
      await expect(docket(page).stampNow).toBeVisible();
      return docket(page).number();
    },
  };
}
