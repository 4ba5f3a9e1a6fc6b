import type { Locator, Page } from '@playwright/test';

/** Opens a part that is folded under its summary, unless it stands open already; returns the part. */
export async function unfold(inside: Page | Locator, summary: string): Promise<Locator> {
  const part = inside.locator('details').filter({ has: inside.getByText(summary, { exact: true }) });
  if ((await part.getAttribute('open')) === null) await part.locator('summary').first().click();
  return part;
}
