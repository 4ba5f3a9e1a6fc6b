import type { Page } from '@playwright/test';
import type { PhotoFile } from '../world/photo';

/** Where parcels are taken in: a number is scanned or typed, the unit compared with its booking. */
export function arrivals(page: Page) {
  const form = page.getByRole('form', { name: 'Take it in' });
  const number = page.getByRole('textbox', { name: 'Number, serial or carrier reference' });
  return {
    open: () => page.goto('/workshop/arrivals'),
    number,
    heading: page.getByRole('heading', { level: 1 }),
    /** A scanner types and presses Enter. */
    async scan(text: string) {
      await number.fill(text);
      await number.press('Enter');
    },
    fits: page.getByRole('list', { name: 'Bookings that fit' }).getByRole('link'),
    form,
    serial: form.getByRole('textbox', { name: 'Serial, as read from the unit' }),
    inParcel: (name: string) => form.getByRole('checkbox', { name, exact: true }),
    alsoCame: form.getByRole('textbox', { name: /^What (else )?came/ }),
    addPhoto: (photo: PhotoFile) => form.getByLabel(/^Photos of its condition/).setInputFiles(photo),
    addSerialPhoto: (photo: PhotoFile) => form.getByLabel(/^Photo of the serial/).setInputFiles(photo),
    takeIn: form.getByRole('button', { name: 'Take in' }),
    photos: page.getByRole('list', { name: 'Photos of its condition' }).getByRole('link'),
    openJob: () => page.getByRole('link', { name: 'Open the job sheet' }).click(),
  };
}
