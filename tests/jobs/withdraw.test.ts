import { beforeEach, describe, expect, it } from 'vitest';
import { day, dayFromDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { issueInvoice } from '@/lib/invoices/issue-invoice';
import { listToGiveBack } from '@/lib/invoices/list-to-give-back';
import { balanceOf } from '@/lib/invoices/rules/balance';
import { askStart } from '@/lib/jobs/ask-start';
import { putUnderRepair } from '@/lib/jobs/put-under-repair';
import { recordPayment } from '@/lib/jobs/record-payment';
import { recordWork } from '@/lib/jobs/record-work';
import { lastWaiting } from '@/lib/jobs/rules/settled';
import type { ToldBy } from '@/lib/jobs/rules/told';
import { sendMessage } from '@/lib/jobs/send-message';
import { stopRepair } from '@/lib/jobs/stop-repair';
import { withdraw } from '@/lib/jobs/withdraw';
import { drawMail } from '@/lib/mail/draw';
import { attempt } from '@/lib/outcome';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { owedIfWithdrawn } from '@/lib/quotes/stored-withdrawal';
import { resetDatabase, useDatabase } from '@/tests/database';
import { issuedCertificate, takeIn, takeMove, versionOf, waitForPart } from '@/tests/makers/course';
import { makeBooking } from '@/tests/makers/job';
import { askPrice, PAD } from '@/tests/makers/offer';
import { bookAtQuote, makeQuote, makeRequest } from '@/tests/makers/quote';
import { makeFaderRepair } from '@/tests/makers/second-repair';
import { jobNow, makeClaim, proveJob } from '@/tests/makers/walk';
import { BENCH, makeWorkshop, moveToAuckland } from '@/tests/makers/workshop';

/** Half past midnight on Tuesday 1 December 2026 in Auckland: the last day to withdraw is Tuesday 15 December (published vector, computed). */
const BOOKED = new Date('2026-11-30T11:30:00Z');
const HERE = new Date('2026-12-03T10:00:00Z');
const LAST_MOMENT = new Date('2026-12-15T10:59:59Z');
const DAY_AFTER = new Date('2026-12-15T11:00:00Z');

useDatabase();

let world: Awaited<ReturnType<typeof makeWorkshop>>;
beforeEach(async () => {
  await resetDatabase();
  world = await makeWorkshop(BOOKED);
  await moveToAuckland();
  await db.workshop.update({ where: { id: 1 }, data: { withdrawalRule: 'uk' } });
}, 60_000);

async function booked(isStartAsked: boolean): Promise<string> {
  const { jobId } = await makeBooking({ repairId: world.repairId, now: BOOKED, isStartAsked });
  return jobId;
}

async function assessing(isStartAsked: boolean): Promise<string> {
  const jobId = await booked(isStartAsked);
  await takeIn(jobId, HERE);
  return jobId;
}

async function refusalOf(work: () => Promise<unknown>): Promise<string> {
  const outcome = await attempt(work);
  return outcome.ok ? 'done' : outcome.refusal.message;
}

const withdrawNow = async (jobId: string, now: Date) =>
  withdraw({ jobId, shownOwed: owedIfWithdrawn(await jobNow(jobId)), now });
const work = (jobId: string, minutes: number) =>
  recordWork({ jobId, text: 'Socket taken out', minutes, actor: BENCH, now: HERE });

describe('a booking under the right to withdraw', () => {
  it('keeps its last day, and the request to start only where it was made', async () => {
    const [without, asked] = [await jobNow(await booked(false)), await jobNow(await booked(true))];
    expect(without.withdrawUntil && dayFromDate(without.withdrawUntil)).toBe('2026-12-15');
    const [agreed] = without.quotes[0]?.revisions ?? [];
    expect(agreed && dayFromDate(agreed.validUntil)).toBe('2026-12-31');
    expect([without.startRequestedAt, asked.startRequestedAt]).toEqual([null, BOOKED]);
  });

  it('has no such day where the rule is off', async () => {
    await db.workshop.update({ where: { id: 1 }, data: { withdrawalRule: 'off' } });
    const jobId = await booked(true);
    const job = await jobNow(jobId);
    expect([job.withdrawUntil, job.startRequestedAt]).toEqual([null, null]);
    expect(await refusalOf(() => withdrawNow(jobId, HERE))).toMatch(/no right to withdraw/);
  });

  it('is not begun without the request before the period is over', async () => {
    const jobId = await assessing(false);
    const wait = /Work may start after Tuesday,? 15 December 2026\./;
    expect(await refusalOf(() => takeMove(jobId, 'start-bench', LAST_MOMENT))).toMatch(wait);
    expect(await refusalOf(() => waitForPart(jobId, LAST_MOMENT))).toMatch(wait);
    expect(await refusalOf(() => takeMove(jobId, 'start-bench', DAY_AFTER))).toBe('done');
  });

  it('is begun at once with the request, made when booking or later', async () => {
    const early = await assessing(true);
    await takeMove(early, 'start-bench', HERE);
    const later = await assessing(false);
    await askStart({ jobId: later, now: HERE });
    await askStart({ jobId: later, now: HERE });
    expect((await jobNow(later)).events.filter(({ kind }) => kind === 'start-requested')).toHaveLength(1);
    await takeMove(later, 'start-bench', HERE);
    expect((await jobNow(later)).stage).toBe('on-bench');
  });

  it.each([
    ['a yes alone waits on the bench', false, /Work may start after/],
    ['a yes that asks for the start goes on at once', true, /^done$/],
  ])('%s', async (_name, isStartAsked, said) => {
    const jobId = await assessing(false);
    const revision = await askPrice(jobId, HERE);
    await decideOffer({
      jobId,
      revision,
      decision: 'accepted',
      isStartAsked,
      actor: { kind: 'customer' },
      now: HERE,
    });
    const mail = await db.mail.findFirstOrThrow({ where: { jobId, template: 'approval-recorded' } });
    const { text } = await drawMail(mail);
    expect(text.includes('Work goes on after Tuesday 15 December 2026')).toBe(!isStartAsked);
    expect(text.includes('goes back on the bench')).toBe(isStartAsked);
    await work(jobId, 15);
    expect((await jobNow(jobId)).startRequestedAt).toEqual(isStartAsked ? HERE : null);
    expect(await refusalOf(() => takeMove(jobId, 'prove', HERE))).toMatch(said);
  });

  it('promises from the end of the period where work waits for it', async () => {
    // Five working days: from Thursday 3 December, or from Tuesday 15 December.
    const [early, later] = [await jobNow(await assessing(true)), await jobNow(await assessing(false))];
    expect(early.promisedOn && dayFromDate(early.promisedOn)).toBe('2026-12-10');
    expect(later.promisedOn && dayFromDate(later.promisedOn)).toBe('2026-12-22');
  });
});

describe('a customer who withdraws', () => {
  it('before the unit is here cancels the booking, and owes nothing', async () => {
    const jobId = await booked(true);
    await withdrawNow(jobId, HERE);
    const job = await jobNow(jobId);
    expect([job.stage, job.withdrawnAt]).toEqual(['cancelled', HERE]);
    expect(job.quotes[0]?.revisions.map(({ state, grossMinor }) => [state, grossMinor])).toEqual([
      ['replaced', 7200],
      ['accepted', 0],
    ]);
  });

  it('pays in proportion to the work done after a request to start', async () => {
    const jobId = await assessing(true);
    await takeMove(jobId, 'start-bench', HERE);
    // A quarter of the 60 minutes planned, of 72.00.
    await work(jobId, 15);
    await recordPayment({
      jobId,
      amount: 7200,
      method: 'card',
      reference: '',
      receivedOn: dayFromDate(new Date('2026-12-03')),
      actor: BENCH,
      now: HERE,
    });
    await withdrawNow(jobId, LAST_MOMENT);
    const job = await jobNow(jobId);
    expect(job.stage).toBe('declined');
    expect(job.quotes[0]?.revisions.at(-1)?.grossMinor).toBe(1800);
    const mail = await db.mail.findFirstOrThrow({ where: { template: 'withdrawal-recorded' } });
    expect(mail.data).toEqual({ at: '15 Dec 2026, 23:59', owed: 1800, refund: 5400, isHere: true });
  });

  it('pays its share of the repair that was agreed to, whatever the bench put the job under since', async () => {
    const jobId = await assessing(true);
    await work(jobId, 15);
    const before = owedIfWithdrawn(await jobNow(jobId));
    const { repairId } = await makeFaderRepair(world, HERE);
    const { version, repair } = await jobNow(jobId);
    await putUnderRepair({ jobId, version, repairId, actor: BENCH, now: HERE });
    const job = await jobNow(jobId);
    expect(job.repair.minutes).not.toBe(repair.minutes);
    expect(owedIfWithdrawn(job)).toBe(before);
  });

  it.each([
    ['booked', 0, 1],
    ['at work', 1800, 2],
  ])('has an invoice that was issued ahead put right: %s', async (_name, owed, invoices) => {
    const jobId = owed === 0 ? await booked(true) : await assessing(true);
    if (owed > 0) await work(jobId, 15);
    await issueInvoice({ jobId, actor: BENCH, now: HERE });
    await withdrawNow(jobId, HERE);
    const job = await jobNow(jobId);
    const kinds = job.invoices.map(({ kind }) => kind);
    expect(kinds.filter((kind) => kind === 'invoice')).toHaveLength(invoices);
    expect(kinds.filter((kind) => kind === 'credit-note')).toHaveLength(1);
    expect(balanceOf(job).total).toBe(owed);
  });

  it('owes nothing without that request, whatever was done', async () => {
    const jobId = await assessing(false);
    await work(jobId, 40);
    await withdrawNow(jobId, HERE);
    expect((await jobNow(jobId)).quotes[0]?.revisions.at(-1)?.grossMinor).toBe(0);
  });

  // Booked at a quote for the inspection alone; the planned minutes are those of the repair it was attached to.
  it('owes the whole fee of an inspection that is finished, and none of one that is not', async () => {
    const { quoteId } = await makeRequest({ now: BOOKED });
    const fee = { ...PAD, kind: 'inspection-fee', description: 'Inspection', amount: 1800 } as const;
    await makeQuote({ quoteId, repairId: world.repairId, now: BOOKED, lines: [fee] });
    const { jobId } = await bookAtQuote({ quoteId, now: BOOKED, isStartAsked: true });
    await takeIn(jobId, HERE);
    await work(jobId, 15);
    expect(owedIfWithdrawn(await jobNow(jobId))).toBe(0);
    await askPrice(jobId, HERE);
    expect(owedIfWithdrawn(await jobNow(jobId))).toBe(1800);
    await withdrawNow(jobId, HERE);
    const last = (await jobNow(jobId)).quotes[0]?.revisions.at(-1);
    expect(last?.lines.map(({ description, amountMinor }) => [description, amountMinor])).toEqual([
      ['Inspection, finished before the withdrawal', 1800],
    ]);
  });

  it('puts an end to a price that waits for an answer', async () => {
    const jobId = await assessing(true);
    await askPrice(jobId, HERE);
    await withdrawNow(jobId, HERE);
    const job = await jobNow(jobId);
    expect(job.stage).toBe('declined');
    expect(job.quotes[0]?.revisions.map(({ state }) => state)).toEqual(['replaced', 'replaced', 'accepted']);
    const late = () =>
      decideOffer({
        jobId,
        revision: 2,
        decision: 'accepted',
        actor: { kind: 'customer' },
        now: HERE,
      });
    expect(await refusalOf(late)).toMatch(/answered or replaced/);
  });

  it('does so to the end of the last day, and not after it', async () => {
    const jobId = await assessing(true);
    expect(await refusalOf(() => withdrawNow(jobId, DAY_AFTER))).toMatch(/not any more/);
    expect(await refusalOf(() => withdrawNow(jobId, LAST_MOMENT))).toBe('done');
  });

  it('cannot once the repair is fully done', async () => {
    const jobId = await assessing(true);
    await takeMove(jobId, 'start-bench', HERE);
    await proveJob(jobId, world, HERE);
    expect(await refusalOf(() => withdrawNow(jobId, HERE))).not.toBe('done');
    expect((await jobNow(jobId)).stage).toBe('ready');
  });

  it('withdraws once, however often the button is sent', async () => {
    const jobId = await assessing(true);
    await withdraw({ jobId, shownOwed: 0, now: HERE });
    await withdraw({ jobId, shownOwed: 0, now: HERE });
    expect(await db.mail.count({ where: { template: 'withdrawal-recorded' } })).toBe(1);
    expect((await jobNow(jobId)).events.filter(({ kind }) => kind === 'withdrawn')).toHaveLength(1);
  });

  it('has what was paid ahead given back within fourteen days of the withdrawal', async () => {
    const jobId = await assessing(true);
    const money = { method: 'card', reference: '', receivedOn: day('2026-12-03'), actor: BENCH } as const;
    await recordPayment({ jobId, amount: 7200, ...money, now: HERE });
    expect(await listToGiveBack('Europe/London')).toEqual([]);
    // Half an hour before midnight in London: the day of the withdrawal is still the 3rd.
    await withdraw({ jobId, shownOwed: 0, now: new Date('2026-12-03T23:30:00Z') });
    const due = { since: '2026-12-03', dueOn: '2026-12-17', isAfterWithdrawal: true };
    expect(await listToGiveBack('Europe/London')).toMatchObject([{ amount: 7200, ...due }]);
    await recordPayment({ jobId, amount: -7100, ...money, now: LAST_MOMENT });
    expect(await listToGiveBack('Europe/London')).toMatchObject([{ amount: 100, ...due }]);
  });

  describe('some other way than on the page', () => {
    const told = async (jobId: string, how: ToldBy, on: string, now: Date, seen = '') =>
      withdraw({
        jobId,
        shownOwed: owedIfWithdrawn(await jobNow(jobId)),
        told: { how, on: day(on), words: 'I want it back as it is.' },
        seen,
        actor: BENCH,
        version: await versionOf(jobId),
        now,
      });
    const letterOf = async (jobId: string) =>
      (
        await drawMail(await db.mail.findFirstOrThrow({ where: { jobId, template: 'withdrawal-recorded' } }))
      ).text.replace(/\s+/g, ' ');

    it('is in time with a letter that was posted in time, and was heard of when it came', async () => {
      const jobId = await assessing(true);
      await takeMove(jobId, 'start-bench', HERE);
      await work(jobId, 15);
      expect(await refusalOf(() => told(jobId, 'letter', '2026-12-16', DAY_AFTER))).toMatch(/not any more/);
      await told(jobId, 'letter', '2026-12-15', DAY_AFTER);
      const job = await jobNow(jobId);
      expect(job.stage).toBe('declined');
      expect(job.quotes[0]?.revisions.at(-1)).toMatchObject({
        grossMinor: 1800,
        decidedBy: 'told',
        agreedText: 'Told us in a letter of Tuesday 15 December 2026: withdrawn from the contract.',
      });
      const text = await letterOf(jobId);
      expect(text).toContain('16 Dec 2026, 00:00');
      expect(text).toContain(
        'in a letter of Tuesday 15 December 2026, and we wrote it down as your withdrawal',
      );
      expect(text).toContain('I want it back as it is.');
    });

    it('owes no work that was done after the call, and gets money back by the day of the call', async () => {
      const jobId = await assessing(true);
      await takeMove(jobId, 'start-bench', HERE);
      const money = { method: 'card', reference: '', receivedOn: day('2026-12-03'), actor: BENCH } as const;
      await recordPayment({ jobId, amount: 7200, ...money, now: HERE });
      const later = new Date('2026-12-06T10:00:00Z');
      await recordWork({ jobId, text: 'Socket taken out', minutes: 15, actor: BENCH, now: later });
      await told(jobId, 'telephone', '2026-12-04', later);
      expect((await jobNow(jobId)).quotes[0]?.revisions.at(-1)?.grossMinor).toBe(0);
      expect(await listToGiveBack('Pacific/Auckland')).toMatchObject([
        { amount: 7200, since: '2026-12-06', dueOn: '2026-12-18', isAfterWithdrawal: true },
      ]);
      expect(await letterOf(jobId)).toContain('It reached us on Friday 4 December 2026');
    });

    it('told in a message answers that message, as far as it was seen', async () => {
      const jobId = await assessing(false);
      await sendMessage({ jobId, text: 'I withdraw.', actor: { kind: 'customer' }, now: HERE });
      const { id: seen } = await db.message.findFirstOrThrow({ where: { jobId } });
      await told(jobId, 'e-mail', '2026-12-03', HERE, seen);
      expect(lastWaiting((await jobNow(jobId)).messages)).toBeNull();
    });

    it('goes before the return fee of a unit that was asked back, where less is owed by it', async () => {
      const jobId = await assessing(false);
      const stop = async (now: Date) =>
        stopRepair({
          ...{ jobId, version: await versionOf(jobId), why: 'customer-asked', reason: 'They asked.' },
          ...{ actor: BENCH, now },
        });
      expect(await refusalOf(() => stop(HERE))).toMatch(/They may still withdraw from the contract/);
      expect(await refusalOf(() => stop(DAY_AFTER))).toBe('done');
    });
  });

  it('sees the amount again where work was recorded meanwhile', async () => {
    const jobId = await assessing(true);
    const shownOwed = owedIfWithdrawn(await jobNow(jobId));
    await work(jobId, 15);
    expect(await refusalOf(() => withdraw({ jobId, shownOwed, now: HERE }))).toMatch(/More would be owed/);
    expect((await jobNow(jobId)).withdrawnAt).toBeNull();
    expect(await refusalOf(() => withdrawNow(jobId, HERE))).toBe('done');
  });

  it('is not kept from it by what else was written meanwhile, nor by work that is not owed', async () => {
    const jobId = await assessing(false);
    await sendMessage({ jobId, text: 'The dial arrived today.', actor: BENCH, now: HERE });
    await work(jobId, 15);
    await withdraw({ jobId, shownOwed: 0, now: LAST_MOMENT });
    expect((await jobNow(jobId)).stage).toBe('declined');
  });

  it('has nothing to withdraw from on a claim, which is no contract', async () => {
    await db.workshop.update({ where: { id: 1 }, data: { withdrawalRule: 'off' } });
    const number = await issuedCertificate(world, BOOKED);
    await db.workshop.update({ where: { id: 1 }, data: { withdrawalRule: 'uk' } });
    const { jobId } = await makeClaim({ number, now: HERE });
    expect((await jobNow(jobId)).withdrawUntil).toBeNull();
    expect(await refusalOf(() => withdrawNow(jobId, HERE))).toMatch(/no right to withdraw/);
  });
});
