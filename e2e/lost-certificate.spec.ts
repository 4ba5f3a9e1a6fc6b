import { AxeBuilder } from '@axe-core/playwright';
import { lostCertificate } from './screens/lost-certificate';
import { problem } from './screens/problem';
import { issuedCertificate } from './world/issued';
import { readMails, waitForMail } from './world/mailbox';
import { expect, test } from './world/test';

const SAME = 'If we have a certificate or a job for these, a message is on its way to the address on file.';

test('a lost certificate comes back by mail, and nobody else learns that there is one', async ({
  page,
  workshop,
  javaScriptEnabled,
}) => {
  const held = await issuedCertificate(await workshop('owner'));
  const lost = lostCertificate(page);
  const shown = `${held.number.slice(0, 1)}-${held.number.slice(1, 5)}-${held.number.slice(5)}`;

  await test.step('what is missing is asked for', async () => {
    await lost.open();
    await lost.follow();
    await expect(lost.heading).toHaveText('Lost your certificate or your private link?');
    // The checker is a script of the page.
    if (javaScriptEnabled !== false)
      expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
    await lost.send.click();
    await expect(problem(page)).toContainText('Enter your e-mail address');
    await expect(lost.number).toHaveAccessibleDescription(/or the serial number below/);
  });

  await test.step('a stranger with the right serial is told the same and sent nothing', async () => {
    await lost.serial.fill(held.serial);
    await lost.email.fill('stranger@example.org');
    await lost.send.click();
    await expect(lost.answer).toContainText(SAME);
  });

  await test.step('the customer gets the way to it', async () => {
    await lost.serial.fill(held.serial);
    await lost.email.fill(held.email.toUpperCase());
    await lost.send.click();
    await expect(lost.answer).toContainText(SAME);
    const mail = await waitForMail(held.email, new RegExp(`^Your certificate ${shown}$`));
    await page.goto(mail.links.find((link) => link.includes('/job/')) ?? '');
    await expect(page.getByRole('region', { name: 'Your certificate' })).toContainText(shown);
  });

  expect(await readMails('stranger@example.org')).toEqual([]);
});
