import { textOf } from '@/tests/documents/read-pdf';
import { certificate } from '../screens/certificate';
import { bare } from '../screens/docket';
import { fact } from '../screens/fact';
import { privateJob } from '../screens/private-job';
import { readMails, waitForMail } from '../world/mailbox';
import { fetchPaper } from '../world/paper';
import { setClock } from '../world/place';
import { expect, test } from '../world/test';
import type { OpenClaim, People, SentBackJob } from './people';

/** From the code on the certificate to a claim job with its own packing slip. */
export async function openTheClaim({ page, who }: People, first: SentBackJob): Promise<OpenClaim> {
  const { number, code, certificate: certificateNumber } = first;
  const job = privateJob(page);
  let claimLink = '';
  let claimJob = '';
  let claimNumber = '';

  await test.step('weeks later it fails: the code answers for the unit, and for no other', async () => {
    setClock('2027-02-01T08:00:00.000Z');
    await page.goto(code);
    const held = certificate(page);
    await expect(held.heading).toHaveText('Covered until the end of Friday 10 December 2027');
    await expect(fact(held.docket.article, 'Genuine')).toHaveText('yes, signed by us');
    await expect(fact(held.docket.article, 'Serial')).toHaveText('G-209 417');
    await held.serial.fill('G-777 001');
    await held.symptom('A button does nothing').check();
    await held.ask.click();
    await expect(held.answer).toContainText('This looks like another unit');
    await expect(held.answer).toContainText('The serial you gave is another one.');
    await expect(held.openClaim).toBeHidden();
  });

  await test.step('the right serial opens a claim, free of charge, and only one', async () => {
    const held = certificate(page);
    const otherTab = await page.context().newPage();
    const again = certificate(otherTab);
    await otherTab.goto(`/certificate/${bare(certificateNumber)}`);
    for (const each of [held, again]) {
      await each.serial.fill('G209417');
      await each.symptom('A button does nothing').check();
      await each.details.fill('The record button again.');
      await each.ask.click();
      await expect(each.answer).toContainText('This looks covered. We inspect the unit first.');
      await expect(each.answer).toContainText('The serial you gave is the one on the certificate.');
      await expect(each.answer).toContainText(
        '“Buttons renewed” is covered until the end of Friday 10 December 2027.',
      );
      await each.battery('Nothing odd about it').check();
      await each.recordings('I have saved a copy of what I need').check();
      await each.address.fill(who);
    }
    await held.openClaim.click();
    await expect(job.heading).toHaveText('Your claim is open');
    await again.openClaim.click();
    await expect(again.answer).toContainText('A claim is already open');
    await expect(again.openClaim).toBeHidden();
    await otherTab.close();

    claimJob = await job.docket.number();
    expect(claimJob).not.toBe(number);
    const slip = await fetchPaper(page, job.slip);
    expect(textOf(slip.bytes)).toContain(claimJob);
    expect(textOf(slip.bytes)).toContain(`Free of charge under certificate ${certificateNumber}`);
    await expect(fact(job.price, 'Left to pay')).toHaveText('£0.00');
    const mail = await waitForMail(who.email, /^Your claim C-.* is open/);
    claimNumber = /C-\w{4}-\w{4}/.exec(mail.subject)?.[0] ?? '';
    claimLink = mail.links.find((address) => address.includes('/job/')) ?? '';
    await job.open(claimLink);
    expect(await job.docket.number()).toBe(claimJob);
    const opened = (await readMails(who.email)).filter((each) => /^Your claim/.test(each.subject));
    expect(opened).toHaveLength(1);
  });
  return { claim: claimNumber, number: claimJob, link: claimLink };
}
