import type { Page } from '@playwright/test';
import { addressFields } from './address';

/** The way from a repair on the price list to a booked job, one group of questions a page. */
export function booking(page: Page) {
  const goOn = () => page.getByRole('button', { name: 'Continue' }).click();
  const answer = (question: string, choice: string | RegExp) =>
    page.getByRole('group', { name: question }).getByRole('radio', { name: choice });
  return {
    heading: page.getByRole('heading', { level: 1 }),
    start: () => page.getByRole('button', { name: 'Start the booking' }).click(),
    goOn,
    serial: page.getByRole('textbox', { name: 'Serial number' }),
    wrong: page.getByRole('textbox', { name: 'What does it do, or not do?' }),
    history: (what: string) => page.getByRole('checkbox', { name: what }),
    sendsAlong: (name: string) => page.getByRole('checkbox', { name, exact: true }),
    otherAccessory: page.getByRole('textbox', { name: /^Anything else in the parcel/ }),
    battery: (choice: string) => answer('How is the battery?', choice),
    recordings: (choice: string) => answer('Your recordings and settings', choice),
    address: addressFields(page),
    terms: page.getByRole('checkbox', { name: /^I agree to the terms/ }),
    /** The wish for an early start; without it work waits for the end of the right to withdraw. */
    startSoon: page.getByRole('checkbox', { name: /^Please start before/ }),
    book: page.getByRole('button', { name: 'Book this repair' }),
  };
}
