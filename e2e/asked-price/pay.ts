import { textOf } from '@/tests/documents/read-pdf';
import { invoiceDesk } from '../screens/invoice-desk';
import { jobSheet } from '../screens/job-sheet';
import { privateJob } from '../screens/private-job';
import { waitForMail } from '../world/mailbox';
import { fetchPaper } from '../world/paper';
import { setClock } from '../world/place';
import { expect, test } from '../world/test';
import type { BookedQuote, People } from './people';

/** The invoice by itself, the payment, and a credit note for part of it. */
export async function invoicePayAndCredit({ page, who, front }: People, booked: BookedQuote): Promise<void> {
  const { job: number, jobLink } = booked;
  const job = privateJob(page);
  const desk = jobSheet(front);
  const money = invoiceDesk(front);
  let invoice = '';

  await test.step('packing the unit issues the invoice, and the customer sees how to pay', async () => {
    setClock('2026-12-10T09:00:00.000Z');
    await desk.open(number);
    await desk.move('Packed for return').click();
    await expect(desk.docket.stampNow).toContainText('Ready');
    const mail = await waitForMail(who.email, /ready/i);
    invoice = /\b2026-\d{5}\b/.exec(mail.text)?.[0] ?? 'no invoice';
    expect(mail.text).toContain('£9.60');
    await job.open(jobLink);
    await expect(job.price).toContainText('£9.60');
    const paper = await fetchPaper(page, page.getByRole('link', { name: new RegExp(`Invoice ${invoice}`) }));
    expect(paper.contentType).toBe('application/pdf');
    const told = textOf(paper.bytes);
    expect(told).toContain(`Invoice ${invoice}`);
    // 9.60 with 20 % in it: 8.00 + 1.60 (EN 16931 BR-CO-17).
    expect(told).toContain('£8.00');
    expect(told).toContain('£1.60');
    expect(await page.getByRole('link', { name: /^Pay / }).getAttribute('href')).toContain('9.60');
  });

  await test.step('the payment is recorded, and the customer thanked', async () => {
    await desk.open(number);
    await desk.recordPayment('9.60', invoice);
    await expect(desk.owed).toHaveText('Nothing is owed.');
    expect((await waitForMail(who.email, /^Thank you/)).text).toContain('£9.60');
  });

  await test.step('a part of it is credited, never more than there is, and the customer told', async () => {
    await money.open(invoice);
    await money.credit('Return of the unit', '20.00', 'The carrier lost a day.');
    await expect(front.getByRole('textbox', { name: /^Return of the unit/ })).toHaveAccessibleDescription(
      /more than is left/,
    );
    await money.credit('Return of the unit', '3.60', 'The carrier lost a day.');
    await expect(money.done).toContainText('The credit note is issued');
    const structured = await fetchPaper(front, money.structured);
    expect(Buffer.from(structured.bytes).toString('utf8')).toContain(
      '<cbc:TaxInclusiveAmount currencyID="GBP">9.60<',
    );
    const mail = await waitForMail(who.email, /^Credit note/);
    expect(mail.text).toContain('£3.60');
    await job.open(jobLink);
    await expect(job.price).toContainText('£3.60');
    await money.openList();
    await expect(money.toGiveBack(number)).toContainText('£3.60');
    await desk.open(number);
    await expect(desk.owed).toContainText('£3.60');
    await desk.recordPayment('-3.60', 'given back');
    await expect(desk.owed).toHaveText('Nothing is owed.');
  });
}
