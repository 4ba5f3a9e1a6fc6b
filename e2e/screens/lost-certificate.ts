import type { Page } from '@playwright/test';

/** The page for whoever has lost a certificate. */
export function lostCertificate(page: Page) {
  const form = page.getByRole('form', { name: 'Send it to me again' });
  return {
    open: () => page.goto('/certificate'),
    follow: () => page.getByRole('link', { name: /^Lost your certificate/ }).click(),
    heading: page.getByRole('heading', { level: 1 }),
    number: form.getByRole('textbox', { name: /^Certificate, job or claim number/ }),
    serial: form.getByRole('textbox', { name: /^Or the serial number/ }),
    email: form.getByRole('textbox', { name: 'E-mail address' }),
    send: form.getByRole('button', { name: 'Send it again' }),
    answer: form.getByRole('status'),
  };
}
