import type { Page } from '@playwright/test';
import { unfold } from './unfold';

/** An invoice or credit note on the workshop's side. */
export function invoiceDesk(page: Page) {
  return {
    openList: () => page.goto('/workshop/money'),
    open: (number: string) => page.goto(`/workshop/money/invoices/${number}`),
    toGiveBack: (job: string) =>
      page.getByRole('region', { name: 'Money to give back' }).getByRole('row', { name: job }),
    heading: page.getByRole('heading', { level: 1 }),
    done: page.getByRole('status'),
    paper: page.getByRole('link', { name: /^(Invoice|Credit note) \(PDF\)$/ }),
    structured: page.getByRole('link', { name: 'Structured form (UBL, EN 16931)' }),
    credits: page.getByRole('region', { name: 'Credit notes on it' }),
    /** Takes an amount off one line, named by its words. */
    async credit(line: string, amount: string, why: string) {
      const form = await unfold(page, 'Write a credit note');
      await form.getByRole('radio', { name: /^Amounts of single lines/ }).check();
      await form.getByRole('textbox', { name: new RegExp(`^${line}`) }).fill(amount);
      await form.getByRole('textbox', { name: /^Why/ }).fill(why);
      await form.getByRole('button', { name: 'Issue the credit note' }).click();
    },
  };
}
