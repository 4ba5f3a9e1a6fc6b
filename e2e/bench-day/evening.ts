import { today } from '../screens/today';
import { expect, test } from '../world/test';
import type { Afternoon, AtTheBench, Morning, People } from './people';

/** What the day left, as the front desk finds it on the page that it opens first. */
export async function lookAtWhatIsLeft(
  { front }: People,
  left: Morning & AtTheBench & Afternoon,
): Promise<void> {
  const page = today(front);
  await test.step('Today shows what waits, for whom, and nothing that went home', async () => {
    await page.open();
    await expect(page.heading).toHaveText('Today');
    const onUs = (number: string) => page.onUs.getByRole('listitem').filter({ hasText: number });
    await expect(onUs(left.otherUnit)).toContainText('Settle the serial');
    await expect(onUs(left.settled)).toContainText('Start assessing');
    await expect(onUs(left.unbooked)).toContainText('Start assessing');
    const onCustomer = (number: string) =>
      page.onCustomer.getByRole('listitem').filter({ hasText: number }).first();
    for (const number of [left.asked, left.proved, left.redone, left.setAside]) {
      await expect(onCustomer(number)).toBeVisible();
    }
    for (const number of [left.sentBack, left.claim]) await expect(page.all).not.toContainText(number);
  });
}
