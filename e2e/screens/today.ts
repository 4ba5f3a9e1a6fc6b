import type { Page } from '@playwright/test';

/** What waits, and for whom, on one page. */
export function today(page: Page) {
  return {
    open: () => page.goto('/workshop'),
    heading: page.getByRole('heading', { level: 1 }),
    all: page.getByRole('main'),
    onUs: page.getByRole('list', { name: 'Waits on us' }),
    onCustomer: page.getByRole('list', { name: 'Waits on the customer' }),
  };
}
