import type { Locator, Page } from '@playwright/test';

/** Opens a part that is folded under its summary, unless it stands open already; returns the part. */
export async function unfold(inside: Page | Locator, summary: string): Promise<Locator> {
  // Anchored at the start, because a summary may end with a state: 'Damage on the outside not answered'.
  const starts = new RegExp(`^\\s*${summary.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}`);
  const part = inside
    .locator('details')
    .filter({ has: page(inside).locator('summary', { hasText: starts }) });
  if ((await part.getAttribute('open')) === null) await part.locator('summary').first().click();
  return part;
}

function page(inside: Page | Locator): Page {
  return 'page' in inside ? inside.page() : inside;
}
