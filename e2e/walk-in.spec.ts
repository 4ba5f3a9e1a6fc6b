import { changedPrice } from './screens/changed-price';
import { bare, docket } from './screens/docket';
import { jobSheet } from './screens/job-sheet';
import { privateJob } from './screens/private-job';
import { walkInForm } from './screens/walk-in';
import { waitForMail } from './world/mailbox';
import { customer } from './world/people';
import { expect, test } from './world/test';

test('a parcel without a booking is opened, priced, and agreed to by its customer alone', async ({
  page,
  workshop,
}, { project }) => {
  const who = customer(`unbooked-${project.name}`);
  const front = await workshop('front');
  const bench = await workshop('bench');
  const job = privateJob(page);
  const sheet = jobSheet(bench);
  let number = '';
  let link = '';

  await test.step('the front desk opens a job for it, and agrees to nothing', async () => {
    const form = walkInForm(front);
    await form.open();
    await form.takeIn.click();
    await expect(form.serial).toHaveAccessibleDescription(/Enter the serial/);
    await form.repair.selectOption({ label: 'Buttons renewed' });
    await form.serial.fill('G-512 044');
    await form.letter.fill('Two buttons stick. Please mend it.');
    await form.came.fill('Strap');
    await form.battery('In it, and nothing odd about it').check();
    await form.fillCustomer(who);
    await form.takeIn.click();
    await expect(front.getByRole('main')).toContainText('Nothing is agreed with the customer yet');
    number = bare(await docket(front).number());
    const mail = await waitForMail(who.email, /^Your parcel is here/);
    expect(mail.text).toContain('It came without a booking');
    expect(mail.text).toContain('No price is agreed yet');
    link = /https?:\S+\/job\/[\w-]{43}/.exec(mail.links.join(' '))?.[0] ?? '';
  });

  await test.step('no repair starts, and the customer sees no price', async () => {
    await sheet.open(number);
    await sheet.move('Start assessing').click();
    await expect(sheet.docket.stampNow).toContainText('Assessing');
    await expect(sheet.move('Put on the bench')).toBeHidden();
    await expect(bench.getByRole('main')).toContainText('The customer has agreed to no price yet');
    await job.open(link);
    await expect(job.price).toContainText('No price is agreed yet');
    await expect(job.slip).toBeHidden();
    expect((await page.request.get(`${link}/slip.pdf`)).status()).toBe(404);
    await sheet.addFinding('The pads under two buttons are worn.');
    await expect(sheet.findings).toContainText('The pads under two buttons are worn.');
  });

  await test.step('the first price is asked for as one', async () => {
    const desk = jobSheet(front);
    await desk.open(number);
    await desk.writeChangedPrice();
    const price = changedPrice(front);
    await price.reason.fill('The pads under two buttons are worn.');
    await price.line(1).what.fill('Buttons renewed');
    await price.line(1).amount.fill('46.00');
    await price.keep.click();
    await desk.move('Ask for approval').click();
    const mail = await waitForMail(who.email, /^We need your yes or no/);
    expect(mail.text).not.toContain('Agreed so far');
    expect(mail.text).toContain('No: free of charge (£0.00)');
  });

  await test.step('the customer’s yes needs the terms, and makes the contract', async () => {
    await job.open(link);
    await expect(job.heading).toHaveText('We need your yes or no to a price.');
    const yes = page.getByRole('button', { name: 'Yes, repair it and pay £46.00' });
    const terms = page.getByRole('checkbox', { name: /^I agree to the terms/ });
    await yes.click();
    await expect(terms).toHaveAccessibleDescription(/Tick the box/);
    await terms.check();
    await yes.click();
    await expect(job.docket.stampNow).toContainText('On the bench');
    await expect(job.price).toContainText('£46.00');
    const mail = await waitForMail(who.email, /^Your yes is recorded/);
    expect(mail.text).toContain('Your right to withdraw');
  });

  await test.step('it cannot be repaired after all: it comes back free, and the customer reads why', async () => {
    await sheet.open(number);
    await sheet.stopRepair('We cannot repair it', 'The board under the pads has gone to powder.');
    await expect(sheet.history).toContainText('Goes back unrepaired. We cannot repair it');
    const mail = await waitForMail(who.email, /^We cannot repair your unit/);
    expect(mail.text).toContain('gone to powder');
    expect(mail.text).toContain('free of charge (£0.00)');
    await job.open(link);
    await expect(job.heading).toHaveText('Your unit comes back unrepaired.');
    await expect(page.getByRole('main')).toContainText('nothing is left to pay');
  });
});
