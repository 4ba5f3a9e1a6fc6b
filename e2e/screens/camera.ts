import type { Page } from '@playwright/test';

/** The button beside a number or serial, and what it opens. */
export function camera(page: Page) {
  const dialog = page.getByRole('dialog', { name: 'Hold the code before the camera' });
  return {
    open: page.getByRole('button', { name: 'Scan with the camera' }),
    dialog,
    picture: dialog.getByLabel('Picture of the camera'),
    problem: dialog.getByRole('alert'),
    close: dialog.getByRole('button', { name: 'Close the camera' }),
  };
}
