import type { Locator, Page } from '@playwright/test';

/** What a list of terms and texts says for one term: 'Serial' gives 'G-118 402'. */
export function fact(inside: Page | Locator, term: string): Locator {
  const isTerm = inside.getByRole('term').filter({ hasText: new RegExp(`^${escaped(term)}$`) });
  // A term and its text share one box; the text is the one definition in it.
  return isTerm.locator('xpath=..').getByRole('definition');
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
