import type { Page } from '@playwright/test';
import { bare, docket } from './docket';
import { unfold } from './unfold';

/** A request for a price on the workshop's side: what was asked, and the answer to it. */
export function quoteDesk(page: Page) {
  const field = (name: string | RegExp) => page.getByRole('textbox', { name });
  const line = (place: number) => {
    const group = page.getByRole('group', { name: `Line ${place}`, exact: true });
    return {
      kind: group.getByRole('combobox', { name: 'Kind' }),
      what: group.getByRole('combobox', { name: /^What/ }),
      amount: group.getByRole('textbox', { name: /^Amount with tax/ }),
    };
  };
  return {
    openList: () => page.goto('/workshop/quotes'),
    open: (number: string) => page.goto(`/workshop/quotes/${bare(number)}`),
    docket: docket(page),
    saved: page.getByRole('status'),
    photos: page.getByRole('list', { name: 'Photos the customer sent' }).getByRole('link'),
    messages: page.getByRole('list', { name: 'Messages' }),
    async ask(text: string) {
      const form = await unfold(page, 'Ask the customer');
      await form.getByRole('textbox', { name: 'Your question' }).fill(text);
      await form.getByRole('button', { name: 'Send the question' }).click();
    },
    writeQuote: () => page.getByRole('link', { name: 'Write the quote' }).click(),
    /** Chooses the first repair of the catalogue whose words begin so. */
    async repair(name: RegExp) {
      const choice = page.getByRole('combobox', { name: 'Repair of the catalogue' });
      const shown = await choice.getByRole('option').filter({ hasText: name }).first().textContent();
      await choice.selectOption({ label: shown ?? '' });
    },
    takePrice: page.getByRole('checkbox', { name: 'Take its price as the first line' }),
    line,
    found: field('What we found'),
    proposal: field('What we propose'),
    workingDays: field('Working days from the unit’s arrival'),
    validDays: field('Days the price holds'),
    note: field(/^Anything else to know/),
    sums: page.getByRole('button', { name: 'Work out the sum' }),
    send: page.getByRole('button', { name: 'Send the quote' }),
    prices: page.getByRole('region', { name: 'Prices' }),
  };
}
