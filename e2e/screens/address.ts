import type { Locator, Page } from '@playwright/test';
import type { Customer } from '../world/people';

/** The fields of a return address, in booking and claim alike. */
export function addressFields(inside: Page | Locator) {
  const field = (name: string | RegExp) => inside.getByRole('textbox', { name });
  const fields = {
    name: field('Your name'),
    email: field('E-mail address'),
    phone: field(/^Telephone/),
    street: field('Street and number'),
    postcode: field('Postcode'),
    town: field('Town'),
    country: inside.getByRole('combobox', { name: 'Country' }),
  };
  return {
    ...fields,
    async fill(who: Customer) {
      for (const name of ['name', 'email', 'phone', 'street', 'postcode', 'town'] as const) {
        await fields[name].fill(who[name]);
      }
    },
  };
}
