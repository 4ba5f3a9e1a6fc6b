import { today } from '../screens/today';
import { expect, test } from '../world/test';
import type { Afternoon, AtTheBench, Morning, People } from './people';

/** What the day left, as the front desk and the bench find it on the page that they open first. */
export async function lookAtWhatIsLeft(
  { front, bench }: People,
  left: Morning & AtTheBench & Afternoon,
): Promise<void> {
  const page = today(front);
  await test.step('Today shows what waits, for whom, and nothing that went home', async () => {
    await page.open();
    await expect(page.heading).toHaveText('Today');
    const onUs = (number: string) => page.onUs.getByRole('listitem').filter({ hasText: number });
    await expect(onUs(left.otherUnit)).toContainText('Settle the serial');
    // Work at the bench is there to be looked at.
    for (const number of [left.settled, left.unbooked])
      await expect(onUs(number)).toContainText('Look at it');
    const onCustomer = (number: string) =>
      page.onCustomer.getByRole('listitem').filter({ hasText: number }).first();
    for (const number of [left.asked, left.proved, left.redone, left.setAside]) {
      await expect(onCustomer(number)).toBeVisible();
    }
    for (const number of [left.sentBack, left.claim]) await expect(page.all).not.toContainText(number);
  });
  await test.step('and the bench reads on its own what is to be done', async () => {
    const theirs = today(bench);
    await theirs.open();
    for (const number of [left.settled, left.unbooked]) {
      const row = theirs.onUs.getByRole('listitem').filter({ hasText: number });
      await expect(row).toContainText('Start assessing');
    }
  });
}
