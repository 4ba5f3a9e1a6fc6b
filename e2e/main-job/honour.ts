import { readCertificatePayload } from '@/lib/documents/cover-attachment';
import { textOf } from '@/tests/documents/read-pdf';
import { arrivals } from '../screens/arrivals';
import { certificate } from '../screens/certificate';
import { checkSheet } from '../screens/check-sheet';
import { claimDesk } from '../screens/claim-desk';
import { bare } from '../screens/docket';
import { fact } from '../screens/fact';
import { jobSheet } from '../screens/job-sheet';
import { privateJob } from '../screens/private-job';
import { waitForMail } from '../world/mailbox';
import { fetchPaper } from '../world/paper';
import { phonePhoto, tellsBesidesPixels } from '../world/photo';
import { place, setClock } from '../world/place';
import { expect, test } from '../world/test';
import type { OpenClaim, People, SentBackJob } from './people';

/** From the returned unit to the second revision of its certificate. */
export async function honourTheClaim(
  { page, who, bench }: People,
  first: SentBackJob,
  claimed: OpenClaim,
): Promise<void> {
  const { number, lot, code, certificate: certificateNumber } = first;
  const { claim: claimNumber, number: claimJob, link: claimLink } = claimed;
  const job = privateJob(page);
  const sheet = jobSheet(bench);

  await test.step('the unit comes back, and the first repair stands beside it', async () => {
    setClock('2027-02-08T10:00:00.000Z');
    const desk = arrivals(bench);
    await desk.open();
    await desk.scan(`${place.origin}/track/${bare(claimJob)}`);
    await expect(desk.heading).toHaveText('Take in: Tideline Gull');
    await expect(bench.getByRole('main')).toContainText(number);
    await desk.serial.fill('G-209 417');
    await desk.takeIn.click();
    await expect(desk.heading).toHaveText('Taken in: Tideline Gull');
    await desk.openJob();
    await sheet.move('Start assessing').click();
    await expect(sheet.docket.stampNow).toContainText('Assessing');
    await expect(sheet.move('Put on the bench')).toBeHidden();

    const claims = claimDesk(bench);
    await claims.open(claimNumber);
    await expect(claims.compare).toContainText('The first repair');
    await expect(claims.compare).toContainText('The pad under the record button has lifted.');
    await expect(claims.compare).toContainText(lot);
    await expect(claims.readings.getByRole('row', { name: 'Resistance closed' })).toContainText('0.08 Ω');
  });

  await test.step('it is inspected with a photo and ruled covered, and the customer told why', async () => {
    const claims = claimDesk(bench);
    await claims.inspect('A previous joint cracked, dull or lifted', 'Yes', await phonePhoto('joint.jpg'));
    await expect(claims.inspection).toContainText('1 of 10 answered');
    await claims.cause('Our work').check();
    await claims.evidence('Clear: a photo of the inspection shows it').check();
    await claims.reason.fill('The joint under the record button had cracked. We made it.');
    await claims.ruleCovered();
    await expect(fact(claims.ruled, 'Ruling')).toHaveText('covered');

    const mail = await waitForMail(who.email, /^Our ruling on claim/);
    expect(mail.text).toContain('The joint under the record button had cracked. We made it.');
    await job.open(claimLink);
    await expect(job.claim).toContainText('Our ruling');
    await expect(job.claim).toContainText('The joint under the record button had cracked. We made it.');
    const inspected = await fetchPaper(page, job.claim.getByRole('link').last());
    expect(inspected.contentType).toBe('image/jpeg');
    expect(await tellsBesidesPixels(inspected.bytes)).toBe('');
  });

  await test.step('it is repaired, proved and sent back at 0.00', async () => {
    await sheet.open(claimJob);
    await sheet.move('Put on the bench').click();
    await expect(sheet.docket.stampNow).toContainText('On the bench');
    await sheet.addWork('Record button soldered again, joint seen under magnification.', 25);
    await expect(sheet.work).toContainText('Record button soldered again');
    await sheet.move('Start proving').click();
    await expect(sheet.checkSheetHead).toBeVisible();
    const checks = checkSheet(bench);
    for (const [check, value] of [
      ['Resistance closed', '0.06'],
      ['Resistance open', '35'],
    ] as const) {
      await checks.reading(check, value);
      await expect(checks.card(check)).toContainText(`${value} `);
    }
    for (const check of ['Fifty presses in a row', 'No flux, fibres or solder balls left', 'Case closed']) {
      await checks.tick(check);
      await expect(checks.card(check)).toContainText('done, passed');
    }
    await checks.move('Proved: ready to go back').click();
    await expect(sheet.docket.stampNow).toContainText('Ready');

    setClock('2027-02-11T15:00:00.000Z');
    await sheet.open(claimJob);
    await expect(sheet.owed).toHaveText('Nothing is owed.');
    await sheet.dispatch.carrier.fill('Fenroad Carriers');
    await sheet.dispatch.reference.fill('FEN-2201-88');
    await sheet.dispatch.postage.fill('4.20');
    await sheet.dispatch.send.click();
    await expect(sheet.docket.stampNow).toContainText('Sent back');
  });

  await test.step('the certificate has a second revision with the days given back', async () => {
    const mail = await waitForMail(who.email, new RegExp(`^On its way to you: job ${claimJob}`));
    expect(mail.text).toContain(`${certificateNumber} · revision 2`);
    await job.open(claimLink);
    await expect(fact(job.price, 'Left to pay')).toHaveText('£0.00');
    await expect(fact(job.certificate, 'Revision')).toHaveText('2');
    // Out of the customer's hands from 1 February 2027, the first day not counted, to the 17th, the four working days of its carrier after it was
    // sent: sixteen days after 10 December 2027.
    await expect(fact(job.certificate, 'Covered until')).toHaveText('the end of Sunday 26 December 2027');
    const paper = await fetchPaper(page, job.certificateFile);
    expect(textOf(paper.bytes)).toContain('11 Feb 2027, revision 2, replaces revision 1');
    const carried = readCertificatePayload(paper.bytes);
    expect(carried?.certificate.revision).toBe(2);
    expect(carried?.certificate.lines.map((line) => line.endsOn)).toEqual([
      '2027-12-26',
      '2027-12-26',
      '2027-12-26',
    ]);
    expect(`${place.origin}/c/${carried?.token}`).not.toBe(code);

    await page.goto(code);
    const held = certificate(page);
    await expect(held.heading).toHaveText('Covered until the end of Sunday 26 December 2027');
    await expect(page.getByRole('main')).toContainText('Revision 1 is superseded');
    await expect(page.getByRole('main')).toContainText('replaced by revision 2 on 11 Feb 2027');
  });
}
