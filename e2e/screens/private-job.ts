import type { Page } from '@playwright/test';
import { docket } from './docket';

/** A job as its customer sees it through the private link. */
export function privateJob(page: Page) {
  const part = (name: string) => page.getByRole('region', { name });
  return {
    open: (link: string) => page.goto(link),
    heading: page.getByRole('heading', { level: 1 }),
    docket: docket(page),
    done: page.getByRole('status'),
    slip: page.getByRole('link', { name: 'Packing slip (PDF)' }),
    approval: page.getByRole('region', { name: /^New price/ }),
    sayYes: page.getByRole('button', { name: /^Yes, repair it for/ }),
    price: part('Price'),
    certificate: part('Your certificate'),
    certificateFile: page.getByRole('link', { name: 'Certificate (PDF)' }),
    claim: part('Your claim'),
    seen: part('What we have seen and done'),
    photos: page.getByRole('list', { name: 'Photos of your unit' }).getByRole('link'),
    messages: part('Messages'),
    message: page.getByRole('textbox', { name: 'Write to us about this unit' }),
    sendMessage: page.getByRole('button', { name: 'Send the message' }),
    reference: page.getByRole('textbox', { name: /^The number on your post receipt/ }),
    keepReference: page.getByRole('button', { name: 'Keep this number' }),
  };
}
