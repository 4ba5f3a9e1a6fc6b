import type { Page } from '@playwright/test';
import { type StaffRole, staff } from '../world/people';

export function signIn(page: Page) {
  const email = page.getByRole('textbox', { name: 'E-mail address' });
  const password = page.getByLabel('Password');
  const button = page.getByRole('button', { name: 'Sign in' });
  return {
    email,
    password,
    button,
    open: () => page.goto('/workshop/sign-in'),
    /** Signs somebody in and stays on the page that follows. */
    async as(role: StaffRole) {
      await page.goto('/workshop/sign-in');
      await email.fill(staff[role].email);
      await password.fill(staff[role].password);
      await button.click();
      await page.waitForURL((url) => !url.pathname.endsWith('/sign-in'));
    },
  };
}
