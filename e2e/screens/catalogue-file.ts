import type { Locator, Page } from '@playwright/test';

/** The catalogue as files: taking it out, looking at what one would do, bringing it in. */
export function catalogueFile(page: Page) {
  const look = page.getByRole('button', { name: 'Look at what it would do' });
  return {
    open: () => page.goto('/workshop/catalogue/file'),
    download: page.getByRole('link', { name: 'Download the catalogue (CSV)' }),
    downloadChecks: page.getByRole('link', { name: 'Download the check sheets (CSV)' }),
    downloadPolicies: page.getByRole('link', { name: 'Download the policies (CSV)' }),
    /** The lines of a file that can be taken out. */
    async textOf(download: Locator) {
      const response = await page.request.get((await download.getAttribute('href')) ?? '');
      return (await response.body()).toString('utf8').split('\r\n');
    },
    field: page.getByLabel('File', { exact: true }),
    look,
    async choose(text: string) {
      await page
        .getByLabel('File', { exact: true })
        .setInputFiles({ name: 'catalogue.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
      await look.click();
    },
    /** One table of what the file would do, by its caption. */
    table: (caption: string) => page.getByRole('table', { name: caption }),
    import: page.getByRole('button', { name: 'Import this file' }),
    note: page.getByRole('status').filter({ hasText: 'is imported' }),
  };
}
