import { readCertificatePayload } from '@/lib/documents/cover-attachment';
import { textOf } from '@/tests/documents/read-pdf';
import { fact } from '../screens/fact';
import { jobSheet } from '../screens/job-sheet';
import { privateJob } from '../screens/private-job';
import { waitForMail } from '../world/mailbox';
import { canPaintPages, fetchPaper, readCode } from '../world/paper';
import { place, setClock } from '../world/place';
import { expect, test } from '../world/test';
import type { BookedJob, People, SentBackJob } from './people';

/** From the payment to the certificate in the customer's hands. */
export async function sendBackWithCertificate(
  { page, who, front }: People,
  booked: BookedJob,
  lot: string,
): Promise<SentBackJob> {
  const { number, link } = booked;
  const job = privateJob(page);
  const desk = jobSheet(front);
  let certificateNumber = '';
  let code = '';

  await test.step('the payment is recorded, and a wrong carrier reference refused at its field', async () => {
    setClock('2026-12-10T15:00:00.000Z');
    expect((await waitForMail(who.email, /is ready|Ready/)).text).toContain('£60.00');
    await desk.open(number);
    await expect(desk.owed).toHaveText('Left to pay: £60.00');
    await expect(desk.dispatch.send).toBeHidden();
    await desk.recordPayment('60.00', number);
    await expect(desk.owed).toHaveText('Nothing is owed.');
    await desk.dispatch.carrier.fill('Sandmouth Post');
    await expect(desk.dispatch.postage).toBeHidden();
    // UPU S10: the check digit of 47312482 is 9, so this one is a typing error.
    await desk.dispatch.reference.fill('RR473124828GB');
    await desk.dispatch.send.click();
    await expect(desk.dispatch.reference).toHaveAccessibleDescription(/one character looks wrong/);
    await expect(desk.dispatch.carrier).toHaveValue('Sandmouth Post');
    await desk.dispatch.reference.fill('RR 47312482 9 GB');
    // 21 kg is more than Sandmouth Post takes; working it out sends nothing and loses nothing that was typed.
    await desk.dispatch.weight.fill('21000');
    await desk.dispatch.workOut.click();
    await expect(desk.dispatch.answers.getByRole('row', { name: /Sandmouth Post/ })).toContainText(
      'Too heavy',
    );
    await expect(desk.dispatch.carrier).toHaveValue('Sandmouth Post');
    await desk.dispatch.send.click();
    await expect(desk.dispatch.carrier).toHaveAccessibleDescription(/takes up to 20 kg/);
    await desk.dispatch.weight.fill('1250');
    await desk.dispatch.send.click();
    await expect(desk.docket.stampNow).toContainText('Sent back');
  });

  await test.step('the customer gets it back with a certificate', async () => {
    const mail = await waitForMail(who.email, /^On its way to you/);
    expect(mail.text).toContain('Sandmouth Post');
    expect(mail.text).toContain('https://post.example.org/follow/RR473124829GB');
    certificateNumber = /W-\w{4}-\w{4}/.exec(mail.text)?.[0] ?? '';
    await job.open(link);
    await expect(fact(job.certificate, 'Number')).toHaveText(certificateNumber);
    await expect(fact(job.certificate, 'Covered until')).toHaveText('the end of Friday 10 December 2027');
    const paper = await fetchPaper(page, job.certificateFile);
    expect(paper.contentType).toBe('application/pdf');
    const told = textOf(paper.bytes);
    expect(told).toContain(`Certificate ${certificateNumber} Covered until Friday 10 December 2027`);
    expect(told).toContain('Work: Buttons renewed 12 months 10 Dec 2026 10 Dec 2027');
    expect(told).toContain('12 months from 10 Dec 2026 ends 10 Dec 2027');
    expect(told).toContain('That day itself is not counted.');
    expect(told).toContain('Damage after the unit came back: a drop, a blow, liquid');
    expect(told).toContain('How to claim');
    expect(told).toContain('Open the claim, print the packing slip or write its number on the parcel');
    // Consumer Rights Act 2015 s.30 and s.49: the certificate says that it takes no right away.
    expect(told).toContain('You have rights by law, and this certificate does not take any of them away.');
    expect(told).toContain('Consumer Rights Act 2015, section 49');
    expect(told).toContain('Resistance closed 0.35 Ω at most 0.2 Ω Fail, redone');
    expect(told).toContain(lot);

    const carried = readCertificatePayload(paper.bytes);
    // Regulation (EEC, Euratom) 1182/71 Art. 3: the day of the event is not counted, the corresponding date is the last day.
    expect(carried?.certificate.lines.map((line) => line.endsOn)).toEqual([
      '2027-12-10',
      '2027-12-10',
      '2027-12-10',
    ]);
    code = `${place.origin}/c/${carried?.token}`;
    if (canPaintPages) expect(readCode(paper.bytes)).toBe(code);
  });
  return { ...booked, lot, certificate: certificateNumber, code };
}
