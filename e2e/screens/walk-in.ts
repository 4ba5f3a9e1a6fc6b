import type { Page } from '@playwright/test';
import type { Customer } from '../world/people';

/** The form for a parcel that came without a booking. */
export function walkInForm(page: Page) {
  const form = page.getByRole('form', { name: 'A parcel without a booking' });
  const field = (name: string | RegExp) => form.getByRole('textbox', { name });
  return {
    async open() {
      await page.goto('/workshop/arrivals');
      await page.getByRole('link', { name: 'A parcel without a booking' }).click();
    },
    repair: form.getByRole('combobox', { name: 'Unit and repair' }),
    serial: field('Serial, as read from the unit'),
    letter: field('What the letter says'),
    came: field(/^What came with the unit/),
    battery: (name: string) => form.getByRole('radio', { name }),
    async fillCustomer(who: Customer) {
      await field('Name').fill(who.name);
      await field('E-mail address').fill(who.email);
      await field('Street and number').fill(who.street);
      await field('Postcode').fill(who.postcode);
      await field('Town').fill(who.town);
    },
    takeIn: form.getByRole('button', { name: 'Open the job and take it in' }),
  };
}
