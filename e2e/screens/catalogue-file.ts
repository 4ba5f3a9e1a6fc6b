import type { Page } from '@playwright/test';

/** The catalogue as a file: taking it out, looking at what one would do, bringing it in. */
export function catalogueFile(page: Page) {
  const look = page.getByRole('button', { name: 'Look at what it would do' });
  return {
    open: () => page.goto('/workshop/catalogue/file'),
    download: page.getByRole('link', { name: 'Download the catalogue (CSV)' }),
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
    note: page.getByRole('status'),
  };
}
