import { AxeBuilder } from '@axe-core/playwright';
import { arrivals } from './screens/arrivals';
import { booking } from './screens/booking';
import { jobSheet } from './screens/job-sheet';
import { priceList } from './screens/price-list';
import { privateJob } from './screens/private-job';
import { withdrawal } from './screens/withdrawal';
import { waitForMail } from './world/mailbox';
import { customer } from './world/people';
import { expect, test } from './world/test';

// The walks begin on 1 December 2026; the demonstration follows the British regulations: 14 days, to 15 December.
const LAST_DAY = /Tuesday,? 15 December 2026/;

test('a customer withdraws from a repair that was not asked to start early', async ({
  page,
  workshop,
  setClock,
  javaScriptEnabled,
}, { project }) => {
  const who = customer(`withdrawing-${project.name}`);
  const front = await workshop('front');
  const job = privateJob(page);
  const right = withdrawal(page);
  const axe = async () => {
    // The checker is a script of the page.
    if (javaScriptEnabled !== false)
      expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
  };
  let number = '';

  await test.step('the right is told before the booking, and the box for an early start is empty', async () => {
    const prices = priceList(page);
    const book = booking(page);
    await prices.open();
    await prices.openModel('Tideline Gull');
    await prices.book('Buttons renewed');
    await book.start();
    await book.serial.fill('G-411 902');
    await book.goOn();
    await book.wrong.fill('Two buttons stick.');
    await book.goOn();
    await book.battery('Nothing odd about it').check();
    await book.recordings('There is nothing on it that I need').check();
    await book.goOn();
    await book.address.fill(who);
    await book.goOn();
    await expect(right.part).toContainText(LAST_DAY);
    await expect(right.part).toContainText('Quay & Alder');
    await expect(book.startSoon).not.toBeChecked();
    await axe();
    await right.lawsWords.click();
    await expect(job.heading).toHaveText('Withdrawing from a contract');
    await expect(page.getByRole('heading', { name: 'Model cancellation form' })).toBeVisible();
    await axe();
    await page.goBack();
    await book.terms.check();
    await expect(book.book).toHaveAccessibleName('Book this repair and pay £46.00');
    await book.book.click();
    await expect(job.heading).toHaveText('Your repair is booked');
    number = await job.docket.number();
  });

  const link = await test.step('the mail repeats it, with the form', async () => {
    const mail = await waitForMail(who.email, /is booked/);
    expect(mail.text).toMatch(LAST_DAY);
    expect(mail.text).toContain('Model cancellation form');
    return mail.links.find((address) => address.includes('/job/')) ?? '';
  });

  await test.step('the workshop takes the unit in, and may not begin yet', async () => {
    setClock('2026-12-03T10:00:00.000Z');
    const arrived = arrivals(front);
    await arrived.open();
    await arrived.scan(number);
    await arrived.serial.fill('G-411 902');
    await arrived.takeIn.click();
    const bench = await workshop('bench');
    const sheet = jobSheet(bench);
    await sheet.open(number);
    await sheet.move('Start assessing').click();
    await expect(sheet.docket.stampNow).toContainText('Assessing');
    const moves = bench.locator('#moves');
    await expect(moves.getByRole('listitem').filter({ hasText: 'Put on the bench' })).toContainText(
      /may still withdraw.*Work may start after Tuesday,? 15 December 2026/,
    );
  });

  await test.step('the customer sees what it costs to withdraw, and does', async () => {
    await job.open(link);
    await expect(job.heading).toHaveText('We are finding out what is wrong.');
    await expect(right.part).toContainText('Nothing (£0.00)');
    await expect(right.askForStart).toBeVisible();
    await axe();
    await right.withdraw();
    await expect(job.done).toContainText('You have withdrawn');
    await expect(job.heading).toHaveText('Your unit comes back unrepaired.');
    await expect(job.price).toContainText('£0.00');
    await expect(right.part).toBeHidden();
  });

  const receipt = await waitForMail(who.email, /^You have withdrawn/);
  expect(receipt.text).toContain('3 Dec 2026, 10:0');
  expect(receipt.text).toContain('Nothing (£0.00)');
});
