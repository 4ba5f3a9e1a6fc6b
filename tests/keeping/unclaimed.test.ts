import { beforeEach, describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { clockRound } from '@/lib/jobs/clock-round';
import { decideUnclaimed } from '@/lib/jobs/decide-unclaimed';
import { moveJob } from '@/lib/jobs/move';
import { recordPayment } from '@/lib/jobs/record-payment';
import { sendMessage } from '@/lib/jobs/send-message';
import { readToday } from '@/lib/jobs/today';
import { sendUnclaimedNotices } from '@/lib/jobs/unclaimed-notices';
import { drawMail } from '@/lib/mail/draw';
import { readContent } from '@/lib/mail/rules/content';
import { listDispatch } from '@/lib/parcels/list-dispatch';
import { resetDatabase, useDatabase } from '@/tests/database';
import { assessedJob, proved, sendBack, takeMove, versionOf } from '@/tests/makers/course';
import { makeCertificate, makeClaim, ruleClaim, takeIn } from '@/tests/makers/walk';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';

const READY = new Date('2026-11-02T10:00:00Z');
const on = (text: string) => new Date(`${text}T10:00:00Z`);
const FIRST = on('2026-11-23');
const SECOND = on('2026-12-14');
const THIRD = on('2027-01-04');
const DECIDE = on('2027-01-25');

useDatabase();
beforeEach(resetDatabase);

/** A unit that is ready and not paid; the letter that says so has left. */
async function unpaid(o: { isTold?: boolean } = {}) {
  const world = await makeWorkshop(READY);
  await db.workshop.update({
    where: { id: 1 },
    data: { storageText: 'We keep it dry, free of charge, while we wait.' },
  });
  const jobId = await assessedJob(world, READY);
  await takeMove(jobId, 'start-bench', READY);
  await proved(world, jobId, READY);
  if (o.isTold !== false) await tell(jobId, READY);
  return { world, jobId };
}

async function tell(jobId: string, sentAt: Date): Promise<void> {
  await db.mail.updateMany({
    where: { jobId, template: 'unit-ready' },
    data: { state: 'sent', sentAt },
  });
}

async function letters(jobId: string) {
  const rows = await db.mail.findMany({
    where: { jobId, template: 'unclaimed-notice' },
    orderBy: [{ queuedAt: 'asc' }, { id: 'asc' }],
  });
  return rows.map(({ template, data }) => readContent({ template, data }).data);
}

/** What the mails about its payments say. */
async function thanked(jobId: string) {
  const rows = await db.mail.findMany({
    where: { jobId, template: 'payment-received' },
    orderBy: { id: 'asc' },
  });
  return rows.map(({ data }) => data);
}

async function stageOf(jobId: string): Promise<string> {
  return (await db.job.findUniqueOrThrow({ where: { id: jobId } })).stage;
}

async function afterAllNotices() {
  const made = await unpaid();
  for (const now of [FIRST, SECOND, THIRD]) await clockRound(now);
  await noticesLeave(made.jobId);
  return made;
}

async function noticesLeave(jobId: string): Promise<void> {
  const data = { state: 'sent', sentAt: THIRD };
  await db.mail.updateMany({ where: { jobId, template: 'unclaimed-notice' }, data });
}

type Decided = Parameters<typeof decideUnclaimed>[0];
async function decide(jobId: string, over: Partial<Decided> = {}): Promise<void> {
  await decideUnclaimed({
    jobId,
    version: await versionOf(jobId),
    decision: 'recycle',
    note: 'Announced for six weeks at our door.',
    until: null,
    actor: OWNER,
    now: DECIDE,
    ...over,
  });
}

describe('a unit whose last notice did not reach its owner', () => {
  it.each([
    ['came back', { bouncedAt: THIRD }],
    ['has not left', { state: 'queued', sentAt: null }],
  ])('does not leave for good when it %s, unless they were told some other way', async (_how, lost) => {
    const { jobId } = await afterAllNotices();
    await db.mail.updateMany({ where: { jobId, template: 'unclaimed-notice' }, data: lost });
    await expect(decide(jobId)).rejects.toMatchObject({ field: 'isToldOtherwise' });
    await decide(jobId, { decision: 'keep-longer', until: day('2027-02-28') });
    await decide(jobId, { isToldOtherwise: true, now: on('2027-03-01') });
    expect(await stageOf(jobId)).toBe('closed');
  });
});

describe('notices that a unit waits', () => {
  it('go out by the clock at the workshop’s intervals, each once, the first sets the unit aside', async () => {
    const { jobId } = await unpaid();
    expect((await clockRound(on('2026-11-22'))).notices).toBe(0);
    expect(await stageOf(jobId)).toBe('ready');
    expect((await clockRound(FIRST)).notices).toBe(1);
    expect(await stageOf(jobId)).toBe('unclaimed');
    expect((await clockRound(FIRST)).notices).toBe(0);
    expect((await clockRound(on('2026-12-13'))).notices).toBe(0);
    expect((await clockRound(SECOND)).notices).toBe(1);
    expect((await clockRound(THIRD)).notices).toBe(1);
    expect((await clockRound(DECIDE)).notices).toBe(0);
    const storage = 'We keep it dry, free of charge, while we wait.';
    expect(await letters(jobId)).toEqual([
      { notice: 1, lastDay: '2026-12-13', storage },
      { notice: 2, lastDay: '2027-01-03', storage },
      { notice: 3, lastDay: '2027-01-24', storage, isLast: true },
    ]);
    const events = await db.jobEvent.findMany({
      where: { jobId, actorKind: 'clock' },
      orderBy: { version: 'asc' },
    });
    expect(events.map((event) => event.kind)).toEqual(['moved', 'unclaimed-notice', 'unclaimed-notice']);
  });

  it('sent by two instances at once leave once', async () => {
    const { jobId } = await unpaid();
    await Promise.all([sendUnclaimedNotices(FIRST), sendUnclaimedNotices(FIRST)]);
    await Promise.all([sendUnclaimedNotices(SECOND), sendUnclaimedNotices(SECOND)]);
    expect((await letters(jobId)).map((each) => 'notice' in each && each.notice)).toEqual([1, 2]);
    expect(await db.unclaimedNotice.count()).toBe(2);
  });

  it('are not sent to somebody who was not told, whose letter came back, or who owes nothing', async () => {
    const { jobId } = await unpaid({ isTold: false });
    expect(await sendUnclaimedNotices(FIRST)).toBe(0);
    await tell(jobId, READY);
    await db.mail.updateMany({
      where: { jobId, template: 'unit-ready' },
      data: { bouncedAt: on('2026-11-03'), bounceNote: '550 5.1.1' },
    });
    expect(await sendUnclaimedNotices(FIRST)).toBe(0);
    await db.mail.updateMany({ where: { jobId }, data: { bouncedAt: null } });
    await db.payment.create({
      data: {
        jobId,
        amountMinor: 7200,
        currency: 'GBP',
        method: 'card',
        receivedOn: READY,
        at: READY,
        userId: BENCH.id,
      },
    });
    expect(await sendUnclaimedNotices(FIRST)).toBe(0);
    expect(await stageOf(jobId)).toBe('ready');
  });

  it('begin again after the customer answered and went silent', async () => {
    const { jobId } = await unpaid();
    await clockRound(FIRST);
    await takeMove(jobId, 'take-up-again', on('2026-11-30'));
    expect(await sendUnclaimedNotices(on('2026-12-20'))).toBe(0);
    expect(await sendUnclaimedNotices(on('2026-12-21'))).toBe(1);
    expect((await letters(jobId)).map((each) => 'notice' in each && each.notice)).toEqual([1, 1]);
  });

  it('end with an answer: whoever writes is not silent, and the notices begin anew', async () => {
    const { jobId } = await unpaid();
    await clockRound(FIRST);
    const text = 'I am at sea until the new year. Please keep it.';
    await sendMessage({ jobId, text, actor: BENCH, now: on('2026-11-24') });
    expect(await stageOf(jobId)).toBe('unclaimed');
    await sendMessage({ jobId, text, actor: { kind: 'customer' }, now: on('2026-11-30') });
    expect(await stageOf(jobId)).toBe('ready');
    expect(await db.unclaimedNotice.count()).toBe(0);
    expect(await sendUnclaimedNotices(on('2026-12-20'))).toBe(0);
    expect(await sendUnclaimedNotices(on('2026-12-21'))).toBe(1);
    expect((await letters(jobId)).map((each) => 'notice' in each && each.notice)).toEqual([1, 1]);
  });

  it('wait for whoever wrote or paid something before the first of them, and not for our own words', async () => {
    const { jobId } = await unpaid();
    const text = 'My pay comes on the 1st.';
    await sendMessage({ jobId, text, actor: { kind: 'customer' }, now: on('2026-11-22') });
    await sendMessage({ jobId, text: 'Thank you.', actor: BENCH, now: on('2026-11-23') });
    expect(await sendUnclaimedNotices(FIRST)).toBe(0);
    const receivedOn = day('2026-12-01');
    const paid = { jobId, method: 'card', reference: '', receivedOn, actor: BENCH } as const;
    await recordPayment({ ...paid, amount: 200, now: on('2026-12-01') });
    await recordPayment({ ...paid, amount: -100, now: on('2026-12-02') });
    expect(await sendUnclaimedNotices(on('2026-12-21'))).toBe(0);
    expect(await sendUnclaimedNotices(on('2026-12-22'))).toBe(1);
  });

  it('are not ended by money that settles nothing', async () => {
    const { jobId } = await unpaid();
    await db.workshop.update({ where: { id: 1 }, data: { unclaimedNotices: 3 } });
    await moveJob({
      jobId,
      version: await versionOf(jobId),
      move: 'set-aside',
      note: '',
      actor: OWNER,
      now: FIRST,
    });
    const paid = {
      jobId,
      method: 'card',
      reference: '',
      receivedOn: day('2026-11-24'),
      actor: BENCH,
    } as const;
    await recordPayment({ ...paid, amount: 7200, now: on('2026-11-24') });
    await moveJob({
      jobId,
      version: await versionOf(jobId),
      move: 'set-aside',
      note: '',
      actor: OWNER,
      now: on('2026-11-25'),
    });
    await recordPayment({ ...paid, amount: 100, now: on('2026-11-25') });
    expect(await stageOf(jobId)).toBe('unclaimed');
    expect((await thanked(jobId)).at(-1)).toEqual({ amount: 100, balance: -100 });
  });

  it('end with the payment that settles it: the unit is taken up again', async () => {
    const { jobId } = await unpaid();
    await clockRound(FIRST);
    const pay = (amount: number) =>
      recordPayment({
        jobId,
        amount,
        method: 'card',
        reference: '',
        receivedOn: day('2026-11-24'),
        actor: BENCH,
        now: on('2026-11-24'),
      });
    await pay(7100);
    expect(await stageOf(jobId)).toBe('unclaimed');
    await pay(100);
    expect(await stageOf(jobId)).toBe('ready');
    expect(await thanked(jobId)).toEqual([
      { amount: 7100, balance: 100, isReady: true },
      { amount: 100, balance: 0, isReady: true },
    ]);
    expect(await db.unclaimedNotice.count()).toBe(0);
    for (const now of [SECOND, THIRD, DECIDE]) expect(await sendUnclaimedNotices(now)).toBe(0);
    await expect(decide(jobId)).rejects.toMatchObject({ code: 'conflict' });
    expect(await letters(jobId)).toHaveLength(1);
  });

  it('set aside by the owner counts as the first, with the workshop’s own last day', async () => {
    const { jobId } = await unpaid();
    await moveJob({
      jobId,
      version: await versionOf(jobId),
      move: 'set-aside',
      note: '',
      actor: OWNER,
      now: on('2026-11-10'),
    });
    expect(await letters(jobId)).toMatchObject([{ notice: 1, lastDay: '2026-11-30' }]);
    expect(await sendUnclaimedNotices(on('2026-11-30'))).toBe(0);
    expect(await sendUnclaimedNotices(on('2026-12-01'))).toBe(1);
  });
});

describe('the owner’s decision', () => {
  it('stands on today’s page from the day after the last notice ended', async () => {
    await afterAllNotices();
    const before = await readToday(on('2027-01-24'));
    expect(before.lists.onCustomer.map((row) => row.wait)).toEqual([
      { who: 'customer', step: 'fetch-or-write' },
    ]);
    const after = await readToday(DECIDE);
    expect(after.lists.onUs.map((row) => row.wait)).toEqual([{ who: 'us', step: 'decide-unclaimed' }]);
  });

  it('closes the job, is kept with its note and told to the customer', async () => {
    const { jobId } = await afterAllNotices();
    await decide(jobId);
    expect(await stageOf(jobId)).toBe('closed');
    const [event] = await db.jobEvent.findMany({ where: { jobId, kind: 'unclaimed-decided' } });
    expect(event).toMatchObject({
      actorKind: 'owner',
      actorId: OWNER.id,
      toStage: 'closed',
      data: { decision: 'recycle', note: 'Announced for six weeks at our door.', until: null },
    });
    const [mail] = await db.mail.findMany({ where: { jobId, template: 'unclaimed-decided' } });
    expect(mail?.data).toEqual({
      told: 'We have had your unit recycled, as the law here allows.',
      note: 'Announced for six weeks at our door.',
    });
  });

  it('ends the claim that the unit came back with, so that its certificate can be claimed from again', async () => {
    const world = await makeWorkshop(READY);
    const { number } = await makeCertificate(world, READY);
    const claim = await makeClaim({ number, now: READY });
    await takeIn(claim.jobId, READY);
    await takeMove(claim.jobId, 'assess', READY);
    await ruleClaim(claim, { cause: 'workmanship', now: READY });
    await takeMove(claim.jobId, 'start-bench', READY);
    await proved(world, claim.jobId, READY);
    const aside = { move: 'set-aside', note: '', actor: OWNER, now: FIRST } as const;
    await moveJob({ jobId: claim.jobId, version: await versionOf(claim.jobId), ...aside });
    for (const now of [SECOND, THIRD]) await clockRound(now);
    await noticesLeave(claim.jobId);
    await decide(claim.jobId, { decision: 'give-away' });
    expect(await db.claim.findUniqueOrThrow({ where: { id: claim.claimId } })).toMatchObject({
      state: 'closed',
      costMinutes: 40,
    });
  });

  it('kept longer, the unit stays and the owner is asked again after that day', async () => {
    const { jobId } = await afterAllNotices();
    await expect(decide(jobId, { decision: 'keep-longer' })).rejects.toMatchObject({ field: 'until' });
    await decide(jobId, { decision: 'keep-longer', until: day('2027-03-01') });
    expect(await stageOf(jobId)).toBe('unclaimed');
    await expect(decide(jobId, { now: on('2027-03-01') })).rejects.toMatchObject({ code: 'invalid' });
    await decide(jobId, { now: on('2027-03-02') });
    expect(await stageOf(jobId)).toBe('closed');
  });

  it('sent back unpaid, the unit may leave with the money still owed, and gets no more notices', async () => {
    const { jobId } = await afterAllNotices();
    await decide(jobId, { decision: 'send-back-unpaid' });
    expect(await stageOf(jobId)).toBe('ready');
    const today = await readToday(DECIDE);
    expect(today.lists.onUs.map((row) => row.wait)).toEqual([{ who: 'us', step: 'send-back' }]);
    expect(await sendUnclaimedNotices(on('2027-06-01'))).toBe(0);
    const { mayGo, waits } = await listDispatch({ now: DECIDE });
    expect([mayGo.map(({ owed }) => owed), waits]).toEqual([[7200], []]);
    const { certificate } = await sendBack(jobId, DECIDE);
    expect(certificate).not.toBeNull();
    expect(await stageOf(jobId)).toBe('sent-back');
    const [told] = await db.mail.findMany({ where: { jobId, template: 'unit-sent-back' } });
    expect(told?.data).toMatchObject({ owed: 7200 });
  });

  it('sent back unpaid, it waits for no rest: the mail about a payment says that it leaves, and what stays owed', async () => {
    const { jobId } = await afterAllNotices();
    await decide(jobId, { decision: 'send-back-unpaid' });
    const paid = { jobId, method: 'card', reference: '', actor: BENCH, now: DECIDE } as const;
    const receivedOn = day('2027-01-25');
    await recordPayment({ ...paid, amount: 4000, receivedOn });
    await recordPayment({ ...paid, amount: 3200, receivedOn });
    expect(await thanked(jobId)).toEqual([
      { amount: 4000, balance: 3200, isReady: true, isWaived: true },
      { amount: 3200, balance: 0, isReady: true },
    ]);
  });

  it('sent back unpaid, it still waits for no payment once it was worked on again', async () => {
    const { world, jobId } = await afterAllNotices();
    await decide(jobId, { decision: 'send-back-unpaid' });
    await takeMove(jobId, 'reopen-work', DECIDE);
    await proved(world, jobId, DECIDE);
    const told = await db.mail.findMany({ where: { jobId, template: 'unit-ready' }, orderBy: { id: 'asc' } });
    const last = told.at(-1);
    expect(last?.data).toMatchObject({ balance: 7200, isWaived: true });
    const { subject, text } = last ? await drawMail(last) : { subject: '', text: '' };
    expect(subject).toMatch(/^Ready to go back: job/);
    expect(text).toContain('We post it on the next working day.');
    expect(text).toContain('£72.00 with tax is left to pay. It stays owed.');
    expect(text).not.toContain('after your payment');
  });

  it('sent back all the same, nothing is said of money where nothing is owed', async () => {
    const { jobId } = await afterAllNotices();
    const paid = { amountMinor: 7200, currency: 'GBP', method: 'cash', userId: OWNER.id };
    await db.payment.create({ data: { jobId, ...paid, receivedOn: THIRD, at: THIRD } });
    await decide(jobId, { decision: 'send-back-unpaid' });
    const [told] = await db.mail.findMany({ where: { jobId, template: 'unclaimed-decided' } });
    expect(told?.data).toMatchObject({ told: 'We send your unit back to you.' });
  });

  it('waits for the last notice, and is the owner’s alone', async () => {
    const { jobId } = await unpaid();
    await clockRound(FIRST);
    await expect(decide(jobId)).rejects.toMatchObject({ code: 'invalid' });
    await clockRound(SECOND);
    await clockRound(THIRD);
    await expect(decide(jobId, { actor: BENCH })).rejects.toMatchObject({ code: 'not-allowed' });
    await expect(decide(jobId, { version: 1 })).rejects.toMatchObject({ code: 'conflict' });
    expect(await stageOf(jobId)).toBe('unclaimed');
  });
});
