import { beforeEach, describe, expect, it } from 'vitest';
import { day, dayFromDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { creditInvoice } from '@/lib/invoices/credit-invoice';
import { invoiceFile } from '@/lib/invoices/invoice-file';
import { issueInvoice } from '@/lib/invoices/issue-invoice';
import { readWholeInvoice } from '@/lib/invoices/records';
import { balanceOf } from '@/lib/invoices/rules/balance';
import { readInvoice, WHOLE_INVOICE } from '@/lib/invoices/stored-invoice';
import { issueForJob } from '@/lib/invoices/write-invoice-of-job';
import { factsOf } from '@/lib/jobs/facts';
import { recordPayment } from '@/lib/jobs/record-payment';
import { attempt } from '@/lib/outcome';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { writeOffer } from '@/lib/quotes/write-offer';
import { resetDatabase, useDatabase } from '@/tests/database';
import { textOf } from '@/tests/documents/read-pdf';
import { assessedJob, proved, takeMove, versionOf } from '@/tests/makers/course';
import { makeBooking } from '@/tests/makers/job';
import { jobNow } from '@/tests/makers/walk';
import { BENCH, makeWorkshop, moveToAuckland, OWNER } from '@/tests/makers/workshop';

const NOW = new Date('2026-11-25T09:00:00Z');

useDatabase();
beforeEach(resetDatabase);

async function provedJob(now = NOW, o: { isFar?: boolean } = {}) {
  const world = await makeWorkshop(now);
  if (o.isFar) await moveToAuckland();
  const jobId = await assessedJob(world, now);
  await takeMove(jobId, 'start-bench', now);
  await proved(world, jobId, now);
  return { world, jobId };
}

async function invoices() {
  const rows = await db.invoice.findMany({ include: WHOLE_INVOICE, orderBy: { sequence: 'asc' } });
  return rows.map(readInvoice);
}

const pay = (jobId: string, amount: number) =>
  recordPayment({
    jobId,
    amount,
    method: 'card',
    reference: '',
    receivedOn: day('2026-11-25'),
    actor: BENCH,
    now: NOW,
  });
type Over = { formKey?: string; number?: string };
const credit = (choice: 'everything' | ReadonlyMap<number, number>, over: Over = {}) =>
  creditInvoice({ number: '2026-00001', choice, reason: 'Goodwill', actor: OWNER, now: NOW, ...over });

describe('an invoice', () => {
  it('is issued with the move to ready, at the agreed price, and named in that mail', async () => {
    const { jobId } = await provedJob();
    const [invoice, ...more] = await invoices();
    expect(more).toEqual([]);
    expect(invoice).toMatchObject({
      kind: 'invoice',
      number: '2026-00001',
      jobId,
      isGross: true,
      issuedOn: '2026-11-25',
      suppliedOn: '2026-11-25',
      dueOn: '2026-12-09',
      net: 6000,
      tax: 1200,
      rounding: 0,
      payable: 7200,
      seller: { name: 'Quay & Alder', taxName: 'VAT' },
      buyer: { name: 'Maren Holt' },
    });
    const mail = await db.mail.findFirstOrThrow({ where: { template: 'unit-ready' } });
    expect(mail.data).toEqual({ balance: 7200, invoice: { number: '2026-00001', dueOn: '2026-12-09' } });
    expect(await db.mail.count({ where: { template: 'invoice-issued' } })).toBe(0);
  });

  it('stays as it was issued when the workshop moves or the customer is corrected', async () => {
    const { jobId } = await provedJob();
    await db.workshop.update({ where: { id: 1 }, data: { name: 'Alder & Quay', town: 'Elsewhere' } });
    const { customerId } = await db.job.findUniqueOrThrow({ where: { id: jobId } });
    await db.customer.update({ where: { id: customerId }, data: { name: 'Somebody Else' } });
    expect((await invoices())[0]).toMatchObject({
      seller: { name: 'Quay & Alder' },
      buyer: { name: 'Maren Holt' },
    });
    for (const change of [
      db.invoice.updateMany({ data: { payableMinor: 1 } }),
      db.invoice.deleteMany(),
      db.invoiceLine.updateMany({ data: { amountMinor: 1 } }),
      db.invoiceTax.deleteMany(),
    ])
      await expect(change).rejects.toThrow();
  });

  it('is in the year it has at the workshop, and each year begins at 1', async () => {
    // Auckland is thirteen hours ahead in December: 23:30 on the last day of 2026, and an hour later 2027.
    const { jobId } = await provedJob(new Date('2026-12-31T10:30:00Z'), { isFar: true });
    await credit('everything');
    const now = new Date('2026-12-31T11:30:00Z');
    await transaction((tx) => issueForJob(tx, { jobId, actor: OWNER, now }));
    expect((await invoices()).map((each) => [each.number, each.kind, each.issuedOn, each.dueOn])).toEqual([
      ['2026-00001', 'invoice', '2026-12-31', '2027-01-14'],
      ['2027-00001', 'invoice', '2027-01-01', '2027-01-15'],
      ['2026-00002', 'credit-note', '2026-11-25', expect.anything()],
    ]);
  });

  it('gives its number back when the transaction is rolled back', async () => {
    const { jobId } = await provedJob();
    await credit('everything');
    await expect(
      transaction(async (tx) => {
        await issueForJob(tx, { jobId, actor: OWNER, now: NOW });
        throw new Error('the power went');
      }),
    ).rejects.toThrow('the power went');
    await issueInvoice({ jobId, actor: OWNER, now: NOW });
    expect((await invoices()).map((each) => each.number)).toEqual(['2026-00001', '2026-00002', '2026-00003']);
  });

  it('can be issued before the unit is ready, and is not issued again then', async () => {
    const world = await makeWorkshop(NOW);
    const jobId = await assessedJob(world, NOW);
    expect(await issueInvoice({ jobId, actor: OWNER, now: NOW })).toEqual({ number: '2026-00001' });
    expect(await db.mail.count({ where: { template: 'invoice-issued' } })).toBe(1);
    // Directive 2006/112/EC Art. 226(7): the day of supply in so far as it can be determined.
    expect((await invoices())[0]?.suppliedOn).toBeNull();
    const again = await attempt(() => issueInvoice({ jobId, actor: OWNER, now: NOW }));
    expect(again).toMatchObject({ ok: false, refusal: { code: 'conflict' } });
    await takeMove(jobId, 'start-bench', NOW);
    await proved(world, jobId, NOW);
    expect(await db.invoice.count()).toBe(1);
  });

  it('of other work at the same price is credited too, since its lines and tax are others', async () => {
    const world = await makeWorkshop(NOW);
    const jobId = await assessedJob(world, NOW);
    await issueInvoice({ jobId, actor: OWNER, now: NOW });
    const line = {
      kind: 'part',
      description: 'Wind shield',
      amount: 7200,
      category: 'E',
      rateBps: 0,
    } as const;
    await writeOffer({
      jobId,
      version: await versionOf(jobId),
      lines: [line],
      reason: 'The shield instead of the socket.',
      onYes: '',
      onNo: '',
      actor: BENCH,
      now: NOW,
    });
    await db.finding.create({ data: { jobId, text: 'Shield torn', userId: BENCH.id, at: NOW } });
    await takeMove(jobId, 'ask-approval', NOW);
    const yes = { revision: 2, decision: 'accepted', actor: { kind: 'customer' }, now: NOW } as const;
    await decideOffer({ jobId, ...yes });
    await proved(world, jobId, NOW);
    expect((await invoices()).map((each) => [each.kind, each.payable, each.tax])).toEqual([
      ['invoice', 7200, 1200],
      ['credit-note', 7200, 1200],
      ['invoice', 7200, 0],
    ]);
  });

  it('at a price that changed afterwards is credited, and one at the new price issued', async () => {
    const world = await makeWorkshop(NOW);
    const jobId = await assessedJob(world, NOW);
    await issueInvoice({ jobId, actor: OWNER, now: NOW });
    await pay(jobId, 7200);
    await writeOffer({
      jobId,
      version: await versionOf(jobId),
      lines: [{ kind: 'labour', description: 'Pad rebuilt', amount: 9600, category: 'S', rateBps: 2000 }],
      reason: 'A pad is lifted.',
      onYes: '',
      onNo: '',
      actor: BENCH,
      now: NOW,
    });
    await db.finding.create({ data: { jobId, text: 'Pad lifted', userId: BENCH.id, at: NOW } });
    await takeMove(jobId, 'ask-approval', NOW);
    await decideOffer({
      jobId,
      revision: 2,
      decision: 'accepted',
      actor: { kind: 'customer' },
      now: NOW,
    });
    await proved(world, jobId, NOW);
    expect((await invoices()).map((each) => [each.number, each.kind, each.payable])).toEqual([
      ['2026-00001', 'invoice', 7200],
      ['2026-00002', 'credit-note', 7200],
      ['2026-00003', 'invoice', 9600],
    ]);
    expect(factsOf(await jobNow(jobId)).owed).toBe(2400);
    const mail = await db.mail.findFirstOrThrow({ where: { template: 'unit-ready' } });
    expect(mail.data).toMatchObject({ balance: 2400, invoice: { number: '2026-00003' } });
    // Of 96.00 the 72.00 are there already, free again since the first invoice was credited.
    const last = await readWholeInvoice('2026-00003');
    if (!last) throw new Error('no such invoice');
    expect(last.paper.prepaid).toBe(7200);
    expect(textOf(await invoiceFile(last)).replace(/\s+/g, ' ')).toContain('£24.00 to pay by');
  });
});

describe('an invoice of work that is done once more', () => {
  it('names no day before it is done, though the unit was ready before', async () => {
    const { jobId } = await provedJob();
    await credit('everything');
    await db.job.update({ where: { id: jobId }, data: { stage: 'assessing' } });
    await issueInvoice({ jobId, actor: OWNER, now: NOW });
    await credit('everything', { number: '2026-00003' });
    expect((await invoices()).map((each) => each.suppliedOn)).toEqual([
      '2026-11-25',
      '2026-11-25',
      null,
      null,
    ]);
  });
});

describe('an invoice of a job that ends early', () => {
  it('was never issued: nothing is owed for a cancelled booking, and what was paid comes back', async () => {
    const { repairId } = await makeWorkshop(NOW);
    const { jobId } = await makeBooking({ repairId, now: NOW });
    await pay(jobId, 2000);
    await takeMove(jobId, 'cancel', NOW);
    expect(balanceOf(await jobNow(jobId))).toEqual({ total: 0, paid: 2000, owed: -2000 });
  });

  it('is credited when the job is cancelled, and nothing is owed', async () => {
    const { repairId } = await makeWorkshop(NOW);
    const { jobId } = await makeBooking({ repairId, now: NOW });
    await issueInvoice({ jobId, actor: OWNER, now: NOW });
    await takeMove(jobId, 'cancel', NOW);
    expect((await invoices()).map((each) => [each.kind, each.payable, each.reason])).toEqual([
      ['invoice', 7200, ''],
      ['credit-note', 7200, 'The job was cancelled'],
    ]);
    expect(balanceOf(await jobNow(jobId)).owed).toBe(0);
    expect(await attempt(() => issueInvoice({ jobId, actor: OWNER, now: NOW }))).toMatchObject({ ok: false });
  });
});

describe('a credit note', () => {
  it('takes part off, then the rest, and no more', async () => {
    const { jobId } = await provedJob();
    await pay(jobId, 7200);
    await credit(new Map([[0, 1000]]));
    expect(factsOf(await jobNow(jobId)).owed).toBe(-1000);
    const mail = await db.mail.findFirstOrThrow({ where: { template: 'credit-note-issued' } });
    expect(mail.data).toEqual({
      number: '2026-00002',
      invoice: '2026-00001',
      amount: 1000,
      reason: 'Goodwill',
      balance: -1000,
    });
    const tooMuch = await attempt(() => credit(new Map([[0, 6201]])));
    expect(tooMuch).toMatchObject({ ok: false, refusal: { code: 'invalid', field: 'line-0' } });
    await credit('everything');
    const all = await invoices();
    expect(all.map((each) => each.payable)).toEqual([7200, 1000, 6200]);
    expect(factsOf(await jobNow(jobId)).owed).toBe(-7200);
    expect(await attempt(() => credit('everything'))).toMatchObject({ ok: false });
    await pay(jobId, -7200);
    expect(factsOf(await jobNow(jobId)).owed).toBe(0);
  });

  it('sent twice with one form key is issued once', async () => {
    await provedJob();
    const formKey = '019aa000-0000-7000-8000-000000000001';
    await credit(new Map([[0, 1000]]), { formKey });
    await credit(new Map([[0, 1000]]), { formKey });
    expect(await db.invoice.count()).toBe(2);
  });

  it('is not given on a credit note, nor on what is not there', async () => {
    await provedJob();
    await credit(new Map([[0, 1000]]));
    for (const number of ['2026-00002', '2026-00099'])
      expect(
        await attempt(() =>
          creditInvoice({ number, choice: 'everything', reason: 'x', actor: OWNER, now: NOW }),
        ),
      ).toMatchObject({ ok: false, refusal: { code: 'not-found' } });
  });
});

describe('payments', () => {
  it('in parts, too much and back again leave what is owed, and each is thanked for', async () => {
    const { jobId } = await provedJob();
    const owedAfter = async (amount: number) => {
      await pay(jobId, amount);
      return factsOf(await jobNow(jobId)).owed;
    };
    expect(await owedAfter(4000)).toBe(3200);
    expect(await owedAfter(4000)).toBe(-800);
    expect(await owedAfter(-800)).toBe(0);
    const mails = await db.mail.findMany({
      where: { template: 'payment-received' },
      orderBy: { id: 'asc' },
      select: { data: true },
    });
    expect(mails.map((mail) => mail.data)).toEqual([
      { amount: 4000, balance: 3200, isReady: true },
      { amount: 4000, balance: -800, isReady: true },
      { amount: -800, balance: 0 },
    ]);
    expect(await attempt(() => pay(jobId, 0))).toMatchObject({ ok: false, refusal: { field: 'amount' } });
  });

  it('that correct an entry of ours are told to nobody', async () => {
    const { jobId } = await provedJob();
    await pay(jobId, 72_000);
    await recordPayment({
      jobId,
      amount: -64_800,
      method: 'card',
      reference: 'typed a nought too many',
      receivedOn: day('2026-11-25'),
      tell: false,
      actor: BENCH,
      now: NOW,
    });
    expect(factsOf(await jobNow(jobId)).owed).toBe(0);
    expect(await db.mail.count({ where: { template: 'payment-received' } })).toBe(1);
  });

  it('are dated on the day they were received', async () => {
    const { jobId } = await provedJob();
    await pay(jobId, 7200);
    const payment = await db.payment.findFirstOrThrow();
    expect(dayFromDate(payment.receivedOn)).toBe('2026-11-25');
  });
});
