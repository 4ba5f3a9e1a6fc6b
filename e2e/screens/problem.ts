import type { Locator, Page } from '@playwright/test';

/** What is wrong with the form that was sent, above it: heading and links to the fields. */
export function problem(inside: Page | Locator): Locator {
  return inside.locator('[data-answer="problem"]');
}
