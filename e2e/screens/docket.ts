import { expect, type Page } from '@playwright/test';

const shownNumber = /[JQWC]-[0-9A-Z]{4}-[0-9A-Z]{4}/;

/** The docket of a page: its number, its run of stamps. */
export function docket(page: Page) {
  const article = page.getByRole('main').getByRole('article').first();
  return {
    article,
    /** Waits for the docket and reads the number on its stub, as it is shown: 'J-4K7Q-X29D'. */
    async number(): Promise<string> {
      await expect(article).toContainText(shownNumber);
      return shownNumber.exec((await article.textContent()) ?? '')?.[0] ?? '';
    },
    /** The stamp of the stage the job is at. */
    stampNow: article.getByRole('list', { name: /^Stages of/ }).locator('[aria-current="step"]'),
  };
}

/** The same number as addresses and files write it: 'J4K7QX29D'. */
export function bare(number: string): string {
  return number.replaceAll('-', '');
}
