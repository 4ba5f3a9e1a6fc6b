import { arrivals } from '../screens/arrivals';
import { changedPrice } from '../screens/changed-price';
import { checkSheet } from '../screens/check-sheet';
import { fact } from '../screens/fact';
import { jobSheet } from '../screens/job-sheet';
import { privateJob } from '../screens/private-job';
import { waitForMail } from '../world/mailbox';
import { fetchPaper } from '../world/paper';
import { phonePhoto, tellsBesidesPixels } from '../world/photo';
import { setClock } from '../world/place';
import { expect, test } from '../world/test';
import type { BookedJob, People } from './people';

/** From the parcel to a proved unit, with a changed price in between; returns the lot of the part that was fitted. */
export async function repairAndProve(
  { page, who, bench, front }: People,
  { number, link }: BookedJob,
): Promise<string> {
  const job = privateJob(page);
  const sheet = jobSheet(bench);
  const desk = jobSheet(front);

  let promise = '';
  await test.step('the front desk scans the slip and takes the parcel in', async () => {
    setClock('2026-12-03T10:00:00.000Z');
    const arrived = arrivals(front);
    await arrived.open();
    await arrived.scan(number.toLowerCase());
    await expect(arrived.heading).toHaveText('Take in: Tideline Gull');
    await arrived.serial.fill('G-209 417');
    await arrived.inParcel('USB cable').check();
    await arrived.alsoCame.fill('Wind shield');
    const photo = await phonePhoto('condition.jpg');
    expect(await tellsBesidesPixels(photo.buffer)).toContain('Lanternfish');
    await arrived.addPhoto(photo);
    await arrived.takeIn.click();
    await expect(arrived.heading).toHaveText('Taken in: Tideline Gull');
    await expect(front.getByRole('main')).toContainText('The serial is the one that was booked');
    // The promise comes from the workshop's own finished jobs; what counts is that the customer is told the same day.
    await expect(fact(front, 'Promise')).toHaveText(/^(Mon|Tues|Wednes|Thurs|Fri)day \d+ December 2026$/);
    promise = (await fact(front, 'Promise').textContent())?.trim() ?? '';
    await expect(fact(front, 'Differences told')).toContainText('Lanyard was not in the parcel');
    const kept = await fetchPaper(front, arrived.photos.first());
    expect(kept.contentType).toBe('image/jpeg');
    expect(await tellsBesidesPixels(kept.bytes)).toBe('');
  });

  await test.step('the customer is told, and sees the photo without the place where it was taken', async () => {
    const mail = await waitForMail(who.email, /^Your parcel is here/);
    expect(mail.text).toContain('Lanyard was not in the parcel');
    expect(mail.text).toContain('Wind shield came with it');
    expect(mail.text).toContain(promise);
    await job.open(link);
    await expect(job.docket.stampNow).toContainText('Arrived');
    const shown = await fetchPaper(page, job.photos.first());
    expect(shown.contentType).toBe('image/jpeg');
    expect(await tellsBesidesPixels(shown.bytes)).toBe('');
  });

  await test.step('the bench finds more than was booked, and the front desk asks for approval', async () => {
    await sheet.open(number);
    await sheet.move('Start assessing').click();
    await expect(sheet.docket.stampNow).toContainText('Assessing');
    await sheet.addFinding('The pad under the record button has lifted.', await phonePhoto('pad.jpg'));
    await expect(sheet.findings).toContainText('The pad under the record button has lifted.');

    await desk.open(number);
    await desk.writeChangedPrice();
    const price = changedPrice(front);
    await price.reason.fill('One pad has to be rebuilt with fine wire.');
    await expect(price.line(1).amount).toHaveValue('46.00');
    await price.line(2).what.fill('Pad rebuilt');
    await price.line(2).amount.fill('14.00');
    await price.keep.click();
    await expect(desk.part('Money')).toContainText('Revision 2: £60.00, written, waits for an answer');
    await desk.move('Ask for approval').click();
    await expect(desk.docket.stampNow).toContainText('Awaiting approval');
  });

  await test.step('the customer says yes on the private page', async () => {
    setClock('2026-12-04T08:30:00.000Z');
    const mail = await waitForMail(who.email, /^We need your yes or no/);
    expect(mail.text).toContain('£60.00');
    await job.open(mail.links.find((address) => address.includes('/job/')) ?? '');
    await expect(job.approval).toContainText('New price: £60.00');
    await expect(job.approval).toContainText('The pad under the record button has lifted.');
    const row = (words: string) => job.approval.getByRole('row').filter({ hasText: words });
    await expect(row('Pad rebuilt')).toContainText('£14.00');
    await expect(row('Pad rebuilt')).not.toContainText('£46.00');
    await expect(row('Total with tax')).toContainText(/£46\.00.*£60\.00/s);
    await job.sayYes.click();
    await expect(job.done).toContainText('We go ahead at this price');
    await expect(job.docket.stampNow).toContainText('On the bench');
  });

  let lot = '';
  await test.step('the bench repairs it with a part from a known lot', async () => {
    setClock('2026-12-07T13:00:00.000Z');
    await sheet.open(number);
    await sheet.addWork('All five buttons replaced, pad rebuilt with 0.1 mm wire.', 55);
    await expect(sheet.work).toContainText('pad rebuilt with 0.1 mm wire. (55 min)');
    lot = /lot (\S+)/.exec(await sheet.takePart(/^Push button/))?.[1] ?? 'no lot';
    await expect(sheet.parts).toContainText(lot);
  });

  await test.step('a failing reading sends it back to the bench, and stays on the sheet', async () => {
    await sheet.move('Start proving').click();
    await expect(sheet.checkSheetHead).toBeVisible();
    const checks = checkSheet(bench);
    await checks.reading('Resistance closed', '0,35');
    await expect(checks.card('Resistance closed')).toContainText('0.35 Ω, failed');
    await checks.move('Back to the bench').click();
    await expect(sheet.docket.stampNow).toContainText('On the bench');
    await sheet.addWork('Joint of the record button made again.', 10);
    await expect(sheet.work).toContainText('Joint of the record button made again.');
    await sheet.move('Start proving').click();
    await expect(sheet.checkSheetHead).toBeVisible();
    await checks.reading('Resistance closed', '0.08');
    await expect(checks.card('Resistance closed')).toContainText('0.35 Ω, failed');
    await expect(checks.card('Resistance closed')).toContainText('0.08 Ω, passed');
    await checks.reading('Resistance open', '40');
    await expect(checks.card('Resistance open')).toContainText('40 MΩ, passed');
    for (const check of ['Fifty presses in a row', 'No flux, fibres or solder balls left', 'Case closed']) {
      await expect(checks.move('Proved: ready to go back')).toBeHidden();
      await checks.tick(check);
      await expect(checks.card(check)).toContainText('done, passed');
    }
    await checks.move('Proved: ready to go back').click();
    await expect(sheet.docket.stampNow).toContainText('Ready');
  });
  return lot;
}
