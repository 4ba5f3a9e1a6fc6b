import type { Page } from '@playwright/test';
import { unfold } from './unfold';

/** The right to withdraw, before booking and on the private page of the job. */
export function withdrawal(page: Page) {
  const part = page.getByRole('region', { name: 'Your right to withdraw' });
  return {
    part,
    askForStart: page.getByRole('button', { name: 'Please start before that day' }),
    async withdraw() {
      const asked = await unfold(part, 'Withdraw from this contract');
      await asked.getByRole('button', { name: 'Confirm the withdrawal' }).click();
    },
    lawsWords: part.getByRole('link', { name: /^The law’s own words/ }),
  };
}
