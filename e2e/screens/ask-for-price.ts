import type { Page } from '@playwright/test';
import type { PhotoFile } from '../world/photo';

/** The form on which a customer asks for a price that is not on the list. */
export function askForPrice(page: Page) {
  const field = (name: string | RegExp) => page.getByRole('textbox', { name });
  return {
    open: () => page.goto('/quote/ask'),
    heading: page.getByRole('heading', { level: 1 }),
    device: page.getByRole('combobox', { name: /^Your device/ }),
    other: field(/^Maker and model/),
    serial: field(/^Serial number/),
    symptom: (name: string) => page.getByRole('checkbox', { name }),
    words: field('In your own words'),
    happened: (what: string) => page.getByRole('checkbox', { name: what }),
    addPhotos: (...photos: PhotoFile[]) => page.getByLabel(/^Photos of the damage/).setInputFiles(photos),
    /** Photos that arrived with a form that was refused. */
    hereAlready: page.getByRole('group', { name: /^Photos that are here already/ }).getByRole('checkbox'),
    name: field('Your name'),
    email: field('E-mail address'),
    problem: page.getByRole('alert'),
    ask: page.getByRole('button', { name: 'Ask for a price' }),
  };
}
