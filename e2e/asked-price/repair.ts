import { arrivals } from '../screens/arrivals';
import { changedPrice } from '../screens/changed-price';
import { fact } from '../screens/fact';
import { jobSheet } from '../screens/job-sheet';
import { privateJob } from '../screens/private-job';
import { waitForMail } from '../world/mailbox';
import { phonePhoto } from '../world/photo';
import { setClock } from '../world/place';
import { expect, test } from '../world/test';
import type { BookedQuote, People } from './people';

/** Two changed prices on the bench: a yes to the first, a no to the second. */
export async function approveAndDecline(
  { page, who, bench, front }: People,
  booked: BookedQuote,
): Promise<void> {
  const { job: number, jobLink } = booked;
  const job = privateJob(page);
  const sheet = jobSheet(bench);
  const desk = jobSheet(front);
  const price = changedPrice(front);
  let promise = '';

  await test.step('the parcel comes, and the agreed quote is what the job costs', async () => {
    setClock('2026-12-07T10:00:00.000Z');
    const arrived = arrivals(front);
    await arrived.open();
    await arrived.scan(number);
    await arrived.serial.fill('G310228');
    await arrived.takeIn.click();
    await expect(arrived.heading).toHaveText('Taken in: Tideline Gull');
    promise = (await fact(front, 'Promise').textContent())?.trim() ?? '';
    await sheet.open(number);
    await expect(sheet.part('Money')).toContainText('Revision 1: £73.50, agreed');
    await sheet.move('Start assessing').click();
    await expect(sheet.docket.stampNow).toContainText('Assessing');
    await sheet.addFinding('The charging circuit is scorched.', await phonePhoto('scorched.jpg'));
    await expect(sheet.findings).toContainText('The charging circuit is scorched.');
  });

  await test.step('a changed price waits, and the promise waits with it', async () => {
    await desk.open(number);
    await desk.writeChangedPrice();
    await price.reason.fill('The charging circuit has to be replaced as well.');
    await price.line(3).what.fill('Charging circuit replaced');
    await price.line(3).amount.fill('18.00');
    await price.keep.click();
    await expect(desk.part('Money')).toContainText('Revision 2: £91.50, written, waits for an answer');
    await desk.move('Ask for approval').click();
    await expect(desk.docket.stampNow).toContainText('Awaiting approval');
    // Two working days later: Monday to Wednesday.
    setClock('2026-12-09T08:00:00.000Z');
    const mail = await waitForMail(who.email, /^We need your yes or no/);
    expect(mail.text).toContain('£91.50');
    await job.open(jobLink);
    await expect(job.approval).toContainText('Charging circuit replaced');
    await expect(job.approval).toContainText('We send the unit back unrepaired. You pay £9.60.');
    await job.sayYes.click();
    await expect(job.docket.stampNow).toContainText('On the bench');
    await desk.open(number);
    await expect(desk.history).toContainText('waited 2 working days');
    await job.open(jobLink);
    expect(promise).not.toBe('');
    await expect(job.heading.locator('xpath=ancestor::header')).not.toContainText(promise);
  });

  await test.step('another one is declined with one tap, and the unit goes back for the return fee', async () => {
    await desk.open(number);
    await desk.writeChangedPrice();
    await price.reason.fill('The main board is cracked under the shield.');
    await price.line(4).what.fill('Main board replaced');
    await price.line(4).amount.fill('140.00');
    await price.keep.click();
    await desk.move('Ask for approval').click();
    await expect(desk.docket.stampNow).toContainText('Awaiting approval');
    await job.open(jobLink);
    await expect(job.approval).toContainText('New price: £231.50');
    await job.sayNo.click();
    await expect(job.done).toContainText('We pack your unit and send it back');
    expect((await waitForMail(who.email, /^Your no is recorded/)).text).toContain('£9.60');
  });
}
