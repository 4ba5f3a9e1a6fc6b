import { beforeEach, describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { listToGiveBack } from '@/lib/invoices/list-to-give-back';
import { recordPayment } from '@/lib/jobs/record-payment';
import { erasePerson } from '@/lib/keeping/erase-person';
import { drawMail } from '@/lib/mail/draw';
import { attempt } from '@/lib/outcome';
import { askPostage } from '@/lib/warranty/ask-postage';
import { endPostage } from '@/lib/warranty/end-postage';
import { useDatabase } from '@/tests/database';
import { versionOf } from '@/tests/makers/course';
import { jobNow, makeCertificate, makeClaim, moveTo, ruleClaim, takeIn } from '@/tests/makers/walk';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

const SENT = new Date('2026-12-03T16:00:00Z');
const NOW = new Date('2027-02-08T10:00:00Z');
const RECEIPT = { fileKey: 'r1', thumbKey: 'r1t', sha256: 'r'.repeat(64), width: 8, height: 6 };

useDatabase();

let claim: Awaited<ReturnType<typeof makeClaim>>;
const begin = madeOnce(async () => {
  const world = await makeWorkshop(SENT);
  const { number } = await makeCertificate(world, SENT);
  const made = await makeClaim({ number, now: NOW });
  await takeIn(made.jobId, NOW);
  await moveTo(made.jobId, 'assess', NOW);
  return made;
});
beforeEach(async () => {
  claim = await begin();
}, 60_000);

const covered = () => ruleClaim(claim, { cause: 'workmanship', now: NOW });
const ask = (over: Partial<Parameters<typeof askPostage>[0]> = {}) =>
  askPostage({
    jobId: claim.jobId,
    amount: 560,
    to: 'Maren Holt, by transfer',
    photos: [RECEIPT],
    now: NOW,
    ...over,
  });
const end = async () =>
  endPostage({
    ...{
      jobId: claim.jobId,
      version: await versionOf(claim.jobId),
      reason: 'You said that it cost nothing.',
    },
    ...{ actor: OWNER, now: NOW },
  });
const pay = (amount = -560) =>
  recordPayment({
    ...{ jobId: claim.jobId, amount, purpose: 'claim-postage', method: 'bank transfer', reference: '' },
    ...{ receivedOn: day('2027-02-08'), actor: BENCH, now: NOW },
  });
const listed = () => listToGiveBack('Europe/London');
const refusalOf = async (work: () => Promise<unknown>) => {
  const outcome = await attempt(work);
  return outcome.ok ? 'done' : `${outcome.refusal.field ?? ''} ${outcome.refusal.message}`;
};
const letter = async (template: string) =>
  (await drawMail(await db.mail.findFirstOrThrow({ where: { template }, orderBy: { id: 'desc' } }))).text;
const state = async () => (await jobNow(claim.jobId)).claim?.postageState;

describe('the postage of a covered claim', () => {
  it('is asked for with amount and receipt, waits among the money to give back, and ends with the payment', async () => {
    await covered();
    await ask();
    expect(await listed()).toMatchObject([
      { amount: 560, currency: 'GBP', since: '2027-02-08', dueOn: '2027-02-22', isPostage: true },
    ]);
    const job = await jobNow(claim.jobId);
    expect(job.photos.filter(({ purpose }) => purpose === 'receipt')).toHaveLength(1);
    expect(job.events.at(-1)).toMatchObject({
      kind: 'postage-asked',
      actorKind: 'customer',
      data: { claim: claim.number, amount: 560 },
    });
    await pay();
    expect(await state()).toBe('paid');
    expect(await listed()).toEqual([]);
    expect(await refusalOf(ask)).toMatch(/paid back already/);
  });

  it('waits for what is left of it after a part, which is told, and may be ended then', async () => {
    await covered();
    await ask();
    await pay(-56);
    expect(await listed()).toMatchObject([{ amount: 504, isPostage: true }]);
    expect(await letter('payment-received')).toContain('£5.04 of it is still to come');
    await end();
    expect([await state(), await listed()]).toEqual(['not-wanted', []]);
    expect(await letter('postage-ended')).toContain('£0.56 of it is paid back');
  });

  it('is asked for again once an entry on the wrong claim was corrected', async () => {
    await covered();
    await ask();
    await pay();
    await pay(560);
    expect([await state(), await listed()]).toMatchObject(['asked', [{ amount: 560 }]]);
  });

  it('may be asked for after an entry that was corrected, where nobody had asked', async () => {
    await covered();
    await pay();
    expect(await state()).toBe('paid');
    expect(await refusalOf(() => pay(561))).toMatch(/^amount /);
    await pay(560);
    expect(await state()).toBeNull();
    expect(await refusalOf(ask)).toBe('done');
  });

  it('is corrected also where the ruling was taken back meanwhile', async () => {
    await covered();
    await pay();
    await db.claim.update({ where: { jobId: claim.jobId }, data: { cause: null, ruling: null } });
    expect(await refusalOf(() => pay(560))).toBe('done');
    expect(await refusalOf(() => pay(-560))).toMatch(/^purpose /);
  });

  it('sent twice is asked for once, and another amount is for a message', async () => {
    await covered();
    await ask();
    await ask();
    expect(await listed()).toHaveLength(1);
    expect((await jobNow(claim.jobId)).events.filter(({ kind }) => kind === 'postage-asked')).toHaveLength(1);
    expect(await refusalOf(() => ask({ amount: 900 }))).toMatch(/asked for your postage already/);
  });

  it('needs a covered claim, an amount and the receipt', async () => {
    expect(await refusalOf(ask)).toMatch(/once a claim is ruled covered/);
    await covered();
    expect(await refusalOf(() => ask({ photos: [] }))).toMatch(/^photos Add a photo of the receipt/);
    expect(await refusalOf(() => ask({ amount: 0 }))).toMatch(/^amount /);
    expect(await state()).toBeNull();
  });

  it('ends without a payment, and who had asked is told why', async () => {
    await covered();
    await ask();
    await end();
    expect([await state(), await listed()]).toEqual(['not-wanted', []]);
    const mail = await db.mail.findFirstOrThrow({ where: { template: 'postage-ended' } });
    const { text } = await drawMail(mail);
    expect(text).toContain('You said that it cost nothing.');
    expect(text).toContain('£5.60');
    expect(await refusalOf(end)).toMatch(/not any more/);
    expect(await refusalOf(ask)).toMatch(/We closed this question/);
  });

  it('ends in silence where nobody had asked, and not before the ruling', async () => {
    expect(await refusalOf(end)).toMatch(/No postage is to be paid back/);
    await covered();
    await end();
    expect(await db.mail.count({ where: { template: 'postage-ended' } })).toBe(0);
  });

  it('keeps the data of the person until it is paid, and says nothing of where it was to go after that', async () => {
    await covered();
    await ask();
    await db.job.updateMany({ data: { stage: 'closed' } });
    await db.claim.updateMany({ data: { state: 'closed' } });
    const { number } = await jobNow(claim.jobId);
    const erase = () => erasePerson({ number, isCoverConfirmed: true, actor: OWNER, now: NOW });
    expect(await refusalOf(erase)).toMatch(/postage/);
    await pay();
    await erase();
    expect((await jobNow(claim.jobId)).claim).toMatchObject({ postageTo: '', postageState: 'paid' });
    // An entry that proves a mistake afterwards leaves nobody to pay: it can be ended, and no mail is written.
    await pay(560);
    await end();
    expect(await state()).toBe('not-wanted');
    expect(await db.mail.count({ where: { template: 'postage-ended' } })).toBe(0);
  });
});
