import { createHash } from 'node:crypto';
import { beforeEach, describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { creditInvoice } from '@/lib/invoices/credit-invoice';
import { invoiceFile } from '@/lib/invoices/invoice-file';
import { issueInvoice } from '@/lib/invoices/issue-invoice';
import { readWholeInvoice } from '@/lib/invoices/records';
import { invoiceNumber } from '@/lib/invoices/rules/number';
import { invoiceTotals } from '@/lib/invoices/rules/totals';
import { buyerOf, sellerOf } from '@/lib/invoices/stored-parties';
import { takeJournal } from '@/lib/invoices/take-journal';
import { writeInvoice } from '@/lib/invoices/write-invoice';
import { recordPayment } from '@/lib/jobs/record-payment';
import { attempt } from '@/lib/outcome';
import { readWorkshop } from '@/lib/workshop/records';
import { resetDatabase, useDatabase } from '@/tests/database';
import { makeBooking } from '@/tests/makers/job';
import { makeWorkshop, OWNER } from '@/tests/makers/workshop';

const NOW = new Date('2026-11-25T09:00:00Z');
const WORKERS = 8;
const INVOICES = 500;

useDatabase();
beforeEach(resetDatabase);

class PowerCut extends Error {}

describe('invoices at once', () => {
  it(`${INVOICES} from ${WORKERS} workers have every number once, whatever is rolled back meanwhile`, async () => {
    const { repairId } = await makeWorkshop(NOW);
    const jobs: string[] = [];
    for (let made = 0; made < WORKERS * 2; made += 1)
      jobs.push((await makeBooking({ repairId, now: NOW })).jobId);
    const seller = sellerOf(await readWorkshop());
    const buyer = buyerOf(await db.customer.findFirstOrThrow());
    const line = { position: 0, kind: 'labour', description: 'Work', amount: 7200 } as const;
    const issue = (jobId: string, isCut: boolean) =>
      transaction(async (tx) => {
        const written = await writeInvoice(tx, {
          jobId,
          corrects: null,
          reason: '',
          currency: 'GBP',
          isGross: true,
          totals: invoiceTotals([{ ...line, category: 'S', rateBps: 2000 }], true),
          suppliedOn: day('2026-11-25'),
          dueDays: 14,
          timeZone: 'Europe/London',
          seller,
          buyer,
          actor: OWNER,
          now: NOW,
        });
        if (isCut) throw new PowerCut();
        return written.number;
      });
    let next = 0;
    let cuts = 0;
    const worker = async () => {
      const given: string[] = [];
      for (let turn = next++; turn < INVOICES; turn = next++) {
        const jobId = jobs[turn % jobs.length] ?? '';
        if (turn % 7 === 3) {
          await expect(issue(jobId, true)).rejects.toBeInstanceOf(PowerCut);
          cuts += 1;
        }
        given.push(await issue(jobId, false));
      }
      return given;
    };
    const given = (await Promise.all(Array.from({ length: WORKERS }, worker))).flat();
    const expected = Array.from({ length: INVOICES }, (_, place) => invoiceNumber(2026, place + 1));
    expect(cuts).toBeGreaterThan(60);
    expect(given.toSorted()).toEqual(expected);
    const stored = await db.invoice.findMany({ select: { number: true }, orderBy: { sequence: 'asc' } });
    expect(stored.map((row) => row.number)).toEqual(expected);
    expect(await db.invoiceSeries.findMany()).toEqual([{ year: 2026, last: INVOICES }]);
  }, 120_000);

  it('eight who press the button for one job issue one', async () => {
    const { repairId } = await makeWorkshop(NOW);
    const { jobId } = await makeBooking({ repairId, now: NOW });
    const outcomes = await Promise.all(
      Array.from({ length: WORKERS }, () => attempt(() => issueInvoice({ jobId, actor: OWNER, now: NOW }))),
    );
    expect(outcomes.filter((outcome) => outcome.ok)).toHaveLength(1);
    expect(await db.invoice.count()).toBe(1);
    expect(await db.mail.count({ where: { template: 'invoice-issued' } })).toBe(1);
  });

  it('credit notes written at once never come to more than their invoice', async () => {
    const { repairId } = await makeWorkshop(NOW);
    const { jobId } = await makeBooking({ repairId, now: NOW });
    const { number } = await issueInvoice({ jobId, actor: OWNER, now: NOW });
    const outcomes = await Promise.all(
      Array.from({ length: 12 }, (_, place) =>
        attempt(() =>
          creditInvoice({
            number,
            choice: place % 4 === 3 ? 'everything' : new Map([[0, 1500]]),
            reason: 'Goodwill',
            actor: OWNER,
            now: NOW,
          }),
        ),
      ),
    );
    const credits = await db.invoice.findMany({
      where: { kind: 'credit-note' },
      orderBy: { sequence: 'asc' },
    });
    expect(credits.reduce((sum, row) => sum + row.payableMinor, 0)).toBe(7200);
    expect(outcomes.filter((outcome) => outcome.ok)).toHaveLength(credits.length);
    expect(outcomes.some((outcome) => !outcome.ok)).toBe(true);
    expect(credits.map((row) => row.sequence)).toEqual(credits.map((_, place) => place + 2));
  });

  it('the same credit entered on two screens that show the same is given once', async () => {
    const { repairId } = await makeWorkshop(NOW);
    const { jobId } = await makeBooking({ repairId, now: NOW });
    const { number } = await issueInvoice({ jobId, actor: OWNER, now: NOW });
    const asked = { number, choice: new Map([[0, 1500]]), reason: 'Goodwill', actor: OWNER, now: NOW };
    const outcomes = await Promise.all(
      Array.from({ length: 4 }, () => attempt(() => creditInvoice({ ...asked, shownLeft: 7200 }))),
    );
    expect(outcomes.flatMap((outcome) => (outcome.ok ? [] : [outcome.refusal.code]))).toEqual(
      Array.from({ length: 3 }, () => 'conflict'),
    );
    expect(await db.invoice.count({ where: { kind: 'credit-note' } })).toBe(1);
  });

  it('the same payment entered on two screens that show the same is recorded once', async () => {
    const { repairId } = await makeWorkshop(NOW);
    const { jobId } = await makeBooking({ repairId, now: NOW });
    const paid = {
      jobId,
      amount: 5000,
      method: 'cash',
      reference: '',
      receivedOn: day('2026-11-25'),
    } as const;
    const outcomes = await Promise.all(
      Array.from({ length: 4 }, () =>
        attempt(() => recordPayment({ ...paid, shown: { owed: 7200, payments: 0 }, actor: OWNER, now: NOW })),
      ),
    );
    expect(outcomes.flatMap((outcome) => (outcome.ok ? [] : [outcome.refusal.code]))).toEqual(
      Array.from({ length: 3 }, () => 'conflict'),
    );
    expect(await db.payment.count({ where: { jobId } })).toBe(1);
    expect(await db.mail.count({ where: { jobId, template: 'payment-received' } })).toBe(1);
    // The rest, by somebody who saw the first.
    const shown = { owed: 2200, payments: 1 };
    await recordPayment({ ...paid, amount: 2200, shown, actor: OWNER, now: NOW });
    expect(await db.payment.count({ where: { jobId } })).toBe(2);
  });

  it('a document first asked for by eight at once is drawn into one file, and all get that one', async () => {
    const { repairId } = await makeWorkshop(NOW);
    const { jobId } = await makeBooking({ repairId, now: NOW });
    const { number } = await issueInvoice({ jobId, actor: OWNER, now: NOW });
    const whole = await readWholeInvoice(number);
    if (!whole) throw new Error('no invoice');
    const files = await Promise.all(Array.from({ length: WORKERS }, () => invoiceFile(whole)));
    const { fileKey, sha256 } = await db.invoice.findFirstOrThrow();
    const digests = files.map((bytes) => createHash('sha256').update(bytes).digest('hex'));
    expect(new Set(digests)).toEqual(new Set([sha256]));
    expect(fileKey).toContain(number);
  });

  it('give the payments entered after a journal was taken in one file, to whoever asks for it', async () => {
    const { repairId } = await makeWorkshop(NOW);
    const { jobId } = await makeBooking({ repairId, now: NOW });
    const paid = {
      jobId,
      method: 'card',
      reference: '',
      receivedOn: day('2026-11-25'),
      actor: OWNER,
    } as const;
    const at = new Date('2026-12-02T09:00:00Z');
    const take = (asked: 'whole' | 'since') =>
      takeJournal({ month: '2026-11', asked, actor: OWNER, now: at });
    const takings = () => db.journalTaking.count();
    await recordPayment({ ...paid, amount: 1000, now: NOW });
    const whole = await Promise.all([take('whole'), take('whole')]);
    for (const text of whole) expect(text).toContain('10.00');
    expect(await takings()).toBe(1);
    for (const amount of [600, 700]) {
      await recordPayment({ ...paid, amount, now: at });
      const files = await Promise.all([1, 2, 3, 4].map(() => take('since')));
      for (const text of files) {
        expect(text).toBe(files[0]);
        expect(text).toContain(`${amount / 100}.00`);
      }
    }
    expect(await takings()).toBe(3);
  });
});
