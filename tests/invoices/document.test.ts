import { beforeEach, describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { drawReceipt } from '@/lib/documents/receipt';
import { putFile, readFile } from '@/lib/files/store';
import { creditInvoice } from '@/lib/invoices/credit-invoice';
import { invoiceFile } from '@/lib/invoices/invoice-file';
import { issueInvoice } from '@/lib/invoices/issue-invoice';
import { receiptData } from '@/lib/invoices/receipt-data';
import { readWholeInvoice } from '@/lib/invoices/records';
import { ublText } from '@/lib/invoices/rules/ubl';
import { recordPayment } from '@/lib/jobs/record-payment';
import type { JobRecord } from '@/lib/jobs/records';
import { readWorkshop } from '@/lib/workshop/records';
import { resetDatabase, useDatabase } from '@/tests/database';
import { textOf } from '@/tests/documents/read-pdf';
import { makeBooking } from '@/tests/makers/job';
import { jobNow } from '@/tests/makers/walk';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';
import { brokenRules } from './check-rules';
import { readXml, textAt } from './read-xml';

const NOW = new Date('2026-11-25T09:00:00Z');

useDatabase();

let jobId = '';

beforeEach(async () => {
  await resetDatabase();
  const world = await makeWorkshop(NOW);
  await db.workshop.update({
    where: { id: 1 },
    data: {
      taxNumber: 'GB 000 0000 00',
      payLink: 'https://pay.example.org/{reference}?sum={amount}&in={currency}',
    },
  });
  ({ jobId } = await makeBooking({ repairId: world.repairId, now: NOW }));
}, 30_000);

const pay = (amount: number, now = NOW) =>
  recordPayment({
    jobId,
    amount,
    method: 'card',
    reference: '',
    receivedOn: day('2026-11-25'),
    actor: BENCH,
    now,
  });
const credit = (amount: number) =>
  creditInvoice({
    number: '2026-00001',
    choice: new Map([[0, amount]]),
    reason: 'A day late',
    actor: OWNER,
    now: NOW,
  });

/** The same job as a workshop prices it that is not within the scope of the tax. */
function outsideTax(job: JobRecord): JobRecord {
  const outside = { taxCategory: 'O', taxRateBps: 0 };
  return {
    ...job,
    quotes: job.quotes.map((quote) => ({
      ...quote,
      revisions: quote.revisions.map((revision) => ({
        ...revision,
        lines: revision.lines.map((line) => ({ ...line, ...outside })),
      })),
    })),
  };
}

async function whole(number = '2026-00001') {
  const found = await readWholeInvoice(number);
  if (!found) throw new Error('no such invoice');
  return found;
}

describe('the document of an invoice', () => {
  it('says who, what, the tax by rate, what was paid before, and how to pay the rest', async () => {
    await pay(2000);
    await issueInvoice({ jobId, actor: OWNER, now: NOW });
    const text = textOf(await invoiceFile(await whole()));
    for (const told of [
      'Invoice 2026-00001',
      '£52.00 to pay by Wednesday 9 December 2026',
      'VAT number: GB 000 0000 00',
      'USB-C socket replaced',
      'VAT 20%',
      '£60.00',
      '£12.00',
      'Paid before this invoice',
      'https://pay.example.org/2026-00001?sum=52.00&in=GBP',
      'Bank transfer with the job number.',
    ])
      expect(text.replace(/\s+/g, ' ')).toContain(told);
    // The unit is not even here.
    expect(text).not.toContain('Work done');
  });

  it('counts as paid before only what was paid for the price, and before it was issued', async () => {
    await pay(1000);
    const { id: _, ...paid } = await db.payment.findFirstOrThrow();
    await db.payment.create({ data: { ...paid, amountMinor: 500, purpose: 'claim-postage' } });
    await issueInvoice({ jobId, actor: OWNER, now: NOW });
    await pay(2000, new Date('2026-11-26T09:00:00Z'));
    expect((await whole()).paper.prepaid).toBe(1000);
  });

  it('takes nothing off for invoices that were issued after it', async () => {
    await pay(7200);
    await issueInvoice({ jobId, actor: OWNER, now: NOW });
    await creditInvoice({ number: '2026-00001', choice: 'everything', reason: 'x', actor: OWNER, now: NOW });
    await issueInvoice({ jobId, actor: OWNER, now: NOW });
    expect((await whole()).paper.prepaid).toBe(7200);
    expect((await whole('2026-00003')).paper.prepaid).toBe(7200);
  });

  it('is drawn once and kept, whatever changes afterwards', async () => {
    await issueInvoice({ jobId, actor: OWNER, now: NOW });
    const first = await invoiceFile(await whole());
    await pay(7200);
    await db.workshop.update({ where: { id: 1 }, data: { name: 'Another name', paper: 'LETTER' } });
    const again = await invoiceFile(await whole());
    expect(Buffer.compare(first, again)).toBe(0);
    const { fileKey } = await db.invoice.findFirstOrThrow();
    expect(Buffer.compare(await readFile(fileKey ?? ''), first)).toBe(0);
    await expect(db.invoice.updateMany({ data: { fileKey: 'other' } })).rejects.toThrow();
  });

  it('is refused when the kept file is no longer the one that was issued', async () => {
    await issueInvoice({ jobId, actor: OWNER, now: NOW });
    await invoiceFile(await whole());
    const { fileKey } = await db.invoice.findFirstOrThrow();
    await putFile(fileKey ?? '', new TextEncoder().encode('%PDF-1.7 another'), 'application/pdf');
    await expect(invoiceFile(await whole())).rejects.toThrow('not the one that was issued');
  });

  it('of a credit note names its invoice and reason, and asks for nothing', async () => {
    await issueInvoice({ jobId, actor: OWNER, now: NOW });
    await credit(1000);
    const text = textOf(await invoiceFile(await whole('2026-00002')));
    expect(text).toContain('£10.00 taken off invoice 2026-00001');
    expect(text).toContain('A day late');
    expect(text).not.toContain('How to pay');
  });
});

describe('the structured form of issued papers', () => {
  it('keeps the rules and carries what was paid before', async () => {
    await pay(2000);
    await issueInvoice({ jobId, actor: OWNER, now: NOW });
    await credit(1001);
    const invoice = readXml(ublText((await whole()).paper));
    expect(brokenRules(invoice, 2)).toEqual([]);
    expect(textAt(invoice, 'LegalMonetaryTotal/PrepaidAmount')).toBe('20.00');
    expect(textAt(invoice, 'LegalMonetaryTotal/PayableAmount')).toBe('52.00');
    const note = readXml(ublText((await whole('2026-00002')).paper));
    expect(brokenRules(note, 2)).toEqual([]);
    expect(textAt(note, 'BillingReference/InvoiceDocumentReference/ID')).toBe('2026-00001');
    expect(textAt(note, 'LegalMonetaryTotal/PayableAmount')).toBe('10.01');
  });
});

describe('a receipt', () => {
  it('is there once something was paid, with credit notes and money given back on it', async () => {
    expect(await receiptData(await jobNow(jobId), await readWorkshop())).toBeNull();
    await issueInvoice({ jobId, actor: OWNER, now: NOW });
    await pay(7200);
    await credit(1000);
    const read = async () => {
      const data = await receiptData(await jobNow(jobId), await readWorkshop());
      return data ? textOf(await drawReceipt(data)) : '';
    };
    const before = await read();
    expect(before).toContain('2026-00001');
    expect(before).toContain('Taken off by credit note: £10.00.');
    expect(before).toContain('Paid more than asked: £10.00.');
    await pay(-1000);
    const after = await read();
    expect(after).toContain('£10.00 given back');
    expect(after).toContain('Paid in full: £62.00');
    expect(after).not.toContain('Paid more than asked');
  });

  it('names tax and rounding as the invoice does: EUR 14.00 at 19 % is 11.76 + 2.23 + 0.01', async () => {
    // EN 16931 BR-CO-17: 11.76 at 19 % is 2.2344, rounded 2.23; BT-114 brings it to the agreed 14.00.
    const { id } = await db.repair.findFirstOrThrow();
    await db.repair.update({ where: { id }, data: { priceMinor: 1400, taxRateBps: 1900 } });
    ({ jobId } = await makeBooking({ repairId: id, now: NOW, serial: 'HW2-10481-K' }));
    await issueInvoice({ jobId, actor: OWNER, now: NOW });
    await pay(1400);
    await db.workshop.update({ where: { id: 1 }, data: { name: 'Another Name', taxNumber: 'GB 1' } });
    const data = await receiptData(await jobNow(jobId), await readWorkshop());
    const { paper } = await whole('2026-00001');
    expect(data?.price).toMatchObject({
      totals: { net: 1176, tax: 223, gross: 1400, breakdown: [{ base: 1176, tax: 223 }] },
      rounding: 1,
      taxNumber: 'GB 000 0000 00',
    });
    expect([paper.net, paper.tax, paper.rounding]).toEqual([1176, 223, 1]);
    expect(data?.workshop.name).toBe(paper.seller.name);
    const text = data ? textOf(await drawReceipt(data)) : '';
    expect(text).toContain('2.23');
    expect(text).toContain('Rounding to the agreed price');
    // The 4.00 taken off are 3.36 + 0.64 at 19 %, so 8.40 + 1.59 + 0.01 are left.
    await credit(400);
    const less = await receiptData(await jobNow(jobId), await readWorkshop());
    expect(less?.price).toMatchObject({
      totals: { net: 840, tax: 159, gross: 1000, breakdown: [{ base: 840, tax: 159 }] },
      rounding: 1,
    });
    expect(less?.price?.lines).toMatchObject([{ amount: 1000 }]);
  });

  it('names the tax only where a line is within its scope', async () => {
    await pay(7200);
    const [job, workshop] = [await jobNow(jobId), await readWorkshop()];
    expect((await receiptData(job, workshop))?.price?.taxName).toBe('VAT');
    const outside = await receiptData(outsideTax(job), { ...workshop, taxNumber: '' });
    if (!outside) throw new Error('a paid job has a receipt');
    expect(outside.price?.taxName).toBeNull();
    expect(textOf(await drawReceipt(outside))).not.toContain('VAT');
  });
});
