import type { Page } from '@playwright/test';
import { addressFields } from './address';
import { docket } from './docket';

/** A certificate as whoever holds its code or its number sees it, with the way to a claim. */
export function certificate(page: Page) {
  const form = page.getByRole('form', { name: 'Claim' });
  return {
    heading: page.getByRole('heading', { level: 1 }),
    docket: docket(page),
    lines: page.getByRole('table', { name: 'Cover lines' }),
    form,
    serial: form.getByRole('textbox', { name: 'Serial number, as it stands on the unit' }),
    symptom: (name: string) =>
      form.getByRole('group', { name: 'What does it do?' }).getByRole('radio', { name, exact: true }),
    details: form.getByRole('textbox', { name: /^Anything else we should know/ }),
    ask: form.getByRole('button', { name: 'See where I stand' }),
    /** The preliminary answer with its reasons. */
    answer: form.getByRole('status'),
    photos: form.getByLabel(/^(Photos of what you see|A photo of the serial)/),
    battery: (choice: string) =>
      form.getByRole('group', { name: 'How is the battery?' }).getByRole('radio', { name: choice }),
    recordings: (choice: string) =>
      form.getByRole('group', { name: 'Your recordings and settings' }).getByRole('radio', { name: choice }),
    address: addressFields(form),
    change: form.getByRole('button', { name: 'Change what I told you' }),
    openClaim: form.getByRole('button', { name: 'Open my claim' }),
  };
}
