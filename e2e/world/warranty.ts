import type { Page } from '@playwright/test';
import { arrivals } from '../screens/arrivals';
import { certificate } from '../screens/certificate';
import { fact } from '../screens/fact';
import { jobSheet } from '../screens/job-sheet';
import { privateJob } from '../screens/private-job';
import type { HeldCertificate } from './certificates';
import { waitForMail } from './mailbox';
import type { Customer } from './people';
import { setClock } from './place';
import { expect, test } from './test';

// Later than every other walk, and a day for each project: the counters of tries of one caller start afresh.
const days: Record<string, string> = { 'script-off': '2027-02-15', 'script-on': '2027-02-16' };

/** Words that put a customer in the wrong; no page says anything with one of them. */
export const blame =
  /fault of yours|your (own )?fault|misus|abuse|careless|you (dropped|broke|damaged)|forged|fake/i;

/** Sets the day of the project's walks; leaves out the project that only differs in the width of the customer's pages. */
export function beginWarrantyDay(project: string): void {
  const day = days[project];
  test.skip(day === undefined, 'The customer is on a phone; staff are wide in every project.');
  setClock(`${day}T09:00:00.000Z`);
}

/** The customer opens the claim with the right serial; the bench takes the unit in and starts assessing. */
export async function openAndTakeIn(
  page: Page,
  bench: Page,
  mine: HeldCertificate,
  who: Customer,
): Promise<{ claim: string; number: string; link: string }> {
  const asked = certificate(page);
  const job = privateJob(page);
  const sheet = jobSheet(bench);
  const opened = { claim: '', number: '', link: '' };
  await test.step('the customer opens a claim', async () => {
    await page.goto(`/certificate/${mine.certificate}`);
    await asked.serial.fill(mine.serial);
    await asked.symptom(mine.symptom).check();
    await asked.ask.click();
    await expect(asked.answer).toContainText('This looks covered. We inspect the unit first.');
    if (mine.hasBattery) await asked.battery('Nothing odd about it').check();
    await asked.recordings('I have saved a copy of what I need').check();
    await asked.address.fill(who);
    await asked.openClaim.click();
    await expect(job.heading).toHaveText('Your claim is open');
    opened.number = await job.docket.number();
    opened.claim = await claimNumberOf(page);
    const mail = await waitForMail(who.email, new RegExp(`^Your claim ${opened.claim} is open`));
    opened.link = mail.links.find((address) => address.includes('/job/')) ?? 'no link';
  });
  await test.step('the unit comes in', async () => {
    const desk = arrivals(bench);
    await desk.open();
    await desk.scan(opened.number);
    await desk.serial.fill(mine.serial);
    await desk.takeIn.click();
    await expect(desk.heading).toContainText('Taken in');
    await sheet.open(opened.number);
    await sheet.move('Start assessing').click();
    await expect(sheet.docket.stampNow).toContainText('Assessing');
  });
  return opened;
}

/** The number of the claim on the private page that is open. */
export async function claimNumberOf(page: Page): Promise<string> {
  const shown = fact(privateJob(page).claim, 'Claim');
  await expect(shown).toHaveText(/^C-\w{4}-\w{4}$/);
  return (await shown.textContent()) ?? '';
}
