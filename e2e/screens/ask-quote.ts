import type { Page } from '@playwright/test';
import type { Customer } from '../world/people';
import type { PhotoFile } from '../world/photo';

/** The form that asks for a price, and what comes of it. */
export function askQuote(page: Page) {
  const form = page.getByRole('form', { name: 'Ask for a price' });
  const field = (name: string | RegExp) => form.getByRole('textbox', { name });
  return {
    open: () => page.goto('/quote/ask'),
    device: field(/^Maker and model/),
    serial: field(/^Serial number/),
    does: (symptom: string) => form.getByRole('checkbox', { name: symptom }),
    wrong: field('In your own words'),
    name: field('Your name'),
    email: field('E-mail address'),
    /** Photos that have arrived with an earlier sending of the form, or ahead of it. */
    kept: form.getByRole('group', { name: 'Photos that are here already' }).getByRole('checkbox'),
    add: (...photos: PhotoFile[]) => form.getByLabel('Photos of the damage').setInputFiles(photos),
    send: () => form.getByRole('button', { name: 'Ask for a price' }).click(),
    async fill(o: { device: string; wrong: string; who: Customer }) {
      await field(/^Maker and model/).fill(o.device);
      await field('In your own words').fill(o.wrong);
      await field('Your name').fill(o.who.name);
      await field('E-mail address').fill(o.who.email);
    },
  };
}
