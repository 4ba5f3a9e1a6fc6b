import { beforeEach, expect, it } from 'vitest';
import { recordCheck } from '@/lib/bench/record-check';
import { day, dayFromDate } from '@/lib/calendar/day';
import { type WorkingCalendar, workingDaysBetween } from '@/lib/calendar/working';
import { db } from '@/lib/db/client';
import { balanceOf } from '@/lib/invoices/rules/balance';
import { factsOf } from '@/lib/jobs/facts';
import { moveJob } from '@/lib/jobs/move';
import { recordPayment } from '@/lib/jobs/record-payment';
import { recordWork } from '@/lib/jobs/record-work';
import { drawMail } from '@/lib/mail/draw';
import { attempt } from '@/lib/outcome';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { useDatabase } from '@/tests/database';
import { assessedJob, proved, readyJob, sendBack, takeMove, versionOf } from '@/tests/makers/course';
import { makeBooking } from '@/tests/makers/job';
import { askPrice } from '@/tests/makers/offer';
import { jobNow } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

const NOW = new Date('2026-11-25T09:00:00Z');
const NEXT_DAY = new Date('2026-11-26T09:00:00Z');
const WHY = 'While we packed it a button stuck.';

useDatabase();

let world: Awaited<ReturnType<typeof makeWorkshop>>;
const begin = madeOnce(() => makeWorkshop(NOW));
beforeEach(async () => {
  world = await begin();
}, 60_000);

const reopen = async (jobId: string, now = NEXT_DAY) =>
  moveJob({ jobId, version: await versionOf(jobId), move: 'reopen-work', note: WHY, actor: BENCH, now });
const WEEK: WorkingCalendar = { weekend: [6, 7], closed: new Map() };
const promised = (job: { promisedOn: Date | null }) => dayFromDate(job.promisedOn ?? new Date(Number.NaN));
const letters = (jobId: string) => db.mail.findMany({ where: { jobId, template: 'work-reopened' } });

it('a unit that was ready is worked on and proved again, its customer told, its invoice and payment kept', async () => {
  const jobId = await readyJob(world, NOW);
  const before = await jobNow(jobId);
  await reopen(jobId);
  const job = await jobNow(jobId);
  expect(job).toMatchObject({ stage: 'on-bench', readyAt: null });
  expect(factsOf(job)).toMatchObject({ isRepaired: false, workEntries: 0, checksMissing: 2 });
  const [mail] = await letters(jobId);
  const letter = mail ? (await drawMail(mail)).text : '';
  // It had been ready for one working day of the days promised, so the promise is one day later.
  expect(workingDaysBetween(promised(before), promised(job), WEEK)).toBe(1);
  expect(letter).toContain('We promise it ready to go back by');
  expect(letter).toContain(WHY);
  expect(letter).toContain('£72.00 with tax, as agreed. That has not changed.');
  await proved(world, jobId, NEXT_DAY);
  const again = await jobNow(jobId);
  expect(again).toMatchObject({ stage: 'ready', readyAt: NEXT_DAY });
  expect(again.invoices.map(({ number }) => number)).toEqual(before.invoices.map(({ number }) => number));
  expect(balanceOf(again)).toMatchObject({ total: 7200, owed: 0 });
  expect((await sendBack(jobId, NEXT_DAY)).certificate).not.toBeNull();
});

it('a unit that is proved again after its invoice’s day is not asked to be paid by that day', async () => {
  const jobId = await assessedJob(world, NOW);
  await takeMove(jobId, 'start-bench', NOW);
  await proved(world, jobId, NOW);
  await reopen(jobId);
  await proved(world, jobId, new Date('2026-12-23T09:00:00Z'));
  const told = await db.mail.findMany({ where: { jobId, template: 'unit-ready' }, orderBy: { id: 'asc' } });
  expect(told.map(({ data }) => data)).toEqual([
    { balance: 7200, invoice: { number: '2026-00001', dueOn: '2026-12-09' } },
    { balance: 7200, invoice: { number: '2026-00001' } },
  ]);
});

it('nobody is told of work that is opened again while it is proved, and what passed says nothing any more', async () => {
  const jobId = await assessedJob(world, NOW);
  await takeMove(jobId, 'start-bench', NOW);
  await recordWork({ jobId, text: 'Socket replaced', minutes: 40, actor: BENCH, now: NOW });
  await takeMove(jobId, 'prove', NOW);
  await recordCheck({ jobId, checkId: world.tilt, given: { tick: true }, note: '', actor: BENCH, now: NOW });
  await reopen(jobId);
  expect(await letters(jobId)).toEqual([]);
  expect(factsOf(await jobNow(jobId))).toMatchObject({ checksMissing: 2, checksFailed: 0 });
  const early = await attempt(() => takeMove(jobId, 'prove', NEXT_DAY));
  expect(early.ok ? '' : early.refusal.message).toBe('Record the work that was done first.');
});

it('a unit that goes back as it came is not opened again', async () => {
  const jobId = await assessedJob(world, NOW);
  await askPrice(jobId, NOW);
  await decideOffer({ jobId, revision: 2, decision: 'declined', actor: { kind: 'customer' }, now: NOW });
  await takeMove(jobId, 'pack-unrepaired', NOW);
  const answer = await attempt(() => reopen(jobId));
  expect(answer.ok ? '' : answer.refusal.message).toBe('The unit goes back without a repair.');
});

it('a booking that was paid and is cancelled says that the money is given back', async () => {
  const { jobId } = await makeBooking({ repairId: world.repairId, now: NOW });
  const received = { method: 'card', reference: '', receivedOn: day('2026-11-25') } as const;
  await recordPayment({ jobId, amount: 7200, ...received, actor: BENCH, now: NOW });
  await takeMove(jobId, 'cancel', NOW);
  const mail = await db.mail.findFirstOrThrow({ where: { jobId, template: 'job-cancelled' } });
  expect((await drawMail(mail)).text).toContain(
    'You have paid £72.00. We give it back the way it came, within 14 days.',
  );
});
