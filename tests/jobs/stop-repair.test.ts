import { beforeEach, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { issueInvoice } from '@/lib/invoices/issue-invoice';
import { balanceOf } from '@/lib/invoices/rules/balance';
import type { Stop } from '@/lib/jobs/rules/stop';
import { sendMessage } from '@/lib/jobs/send-message';
import { stopRepair } from '@/lib/jobs/stop-repair';
import { drawMail } from '@/lib/mail/draw';
import { useDatabase } from '@/tests/database';
import { assessedJob, readyJob, takeMove, versionOf } from '@/tests/makers/course';
import { askPrice } from '@/tests/makers/offer';
import { jobNow, makeCertificate, makeClaim, ruleClaim, sendBack, takeIn } from '@/tests/makers/walk';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

const NOW = new Date('2026-11-25T09:00:00Z');
const LATER = new Date('2027-02-01T09:00:00Z');

useDatabase();

let world: Awaited<ReturnType<typeof makeWorkshop>>;
const begin = madeOnce(() => makeWorkshop(NOW));
beforeEach(async () => {
  world = await begin();
}, 60_000);

async function stop(jobId: string, why: Stop, now = NOW) {
  const version = await versionOf(jobId);
  await stopRepair({ jobId, version, why, reason: 'The chip is no longer made.', actor: BENCH, now });
  const job = await jobNow(jobId);
  const mail = await db.mail.findFirstOrThrow({ where: { jobId, template: 'repair-stopped' } });
  return { job, letter: (await drawMail(mail)).text };
}

it('the customer asked for it while a price waited: they owe the return fee, and the price no longer stands', async () => {
  const jobId = await assessedJob(world, NOW);
  await askPrice(jobId, NOW);
  const { job, letter } = await stop(jobId, 'customer-asked');
  expect(job.stage).toBe('declined');
  expect(job.quotes[0]?.revisions.map(({ state, grossMinor }) => [state, grossMinor])).toEqual([
    ['replaced', 7200],
    ['replaced', 9600],
    ['accepted', 960],
  ]);
  expect(letter).toContain('as you asked');
  expect(letter).toContain('the return fee of £9.60, and nothing else');
});

it('it cannot be repaired: the way back is free, and the unit leaves without a certificate', async () => {
  const jobId = await assessedJob(world, NOW);
  const { letter } = await stop(jobId, 'cannot-repair');
  expect(letter).toContain('We cannot repair your unit');
  expect(letter).toContain('The chip is no longer made.');
  expect(letter).toContain('free of charge (£0.00)');
  await takeMove(jobId, 'pack-unrepaired', NOW);
  expect((await sendBack(jobId, NOW)).certificate).toBeNull();
});

it('an invoice that was issued ahead is named with the one in its place', async () => {
  const jobId = await assessedJob(world, NOW);
  await issueInvoice({ jobId, actor: OWNER, now: NOW });
  const { letter } = await stop(jobId, 'customer-asked');
  expect(letter).toContain('Invoice 2026-00001 is credited and no longer holds. Invoice 2026-00003 takes');
});

it('a message says that the job goes on only until it was stopped', async () => {
  const jobId = await assessedJob(world, NOW);
  await sendMessage({ jobId, text: 'Is the strap yours?', actor: BENCH, now: NOW });
  await stop(jobId, 'cannot-repair');
  await sendMessage({ jobId, text: 'It is in the parcel.', actor: BENCH, now: NOW });
  const mails = await db.mail.findMany({
    where: { jobId, template: 'message-from-workshop' },
    orderBy: { id: 'asc' },
  });
  expect(mails.map(({ data }) => data)).toEqual([
    { text: 'Is the strap yours?', goesOn: true },
    { text: 'It is in the parcel.' },
  ]);
});

it('what was paid beyond what is owed is named as money to give back', async () => {
  const jobId = await readyJob(world, NOW);
  await db.job.update({ where: { id: jobId }, data: { stage: 'on-bench' } });
  const { job, letter } = await stop(jobId, 'cannot-repair');
  expect(balanceOf(job)).toMatchObject({ total: 0, owed: -7200 });
  expect(letter).toContain('£72.00 more than that');
});

it('a covered claim that cannot be repaired goes back free and keeps its certificate', async () => {
  const { number } = await makeCertificate(world, NOW);
  const claim = await makeClaim({ number, now: LATER });
  await takeIn(claim.jobId, LATER);
  await takeMove(claim.jobId, 'assess', LATER);
  await ruleClaim(claim, { cause: 'workmanship', now: LATER });
  const { letter } = await stop(claim.jobId, 'cannot-repair', LATER);
  expect(letter).toContain('Your rights by law');
  await takeMove(claim.jobId, 'pack-unrepaired', LATER);
  expect((await sendBack(claim.jobId, LATER)).certificate).toBeNull();
  const { state } = await db.claim.findUniqueOrThrow({ where: { id: claim.claimId } });
  expect(state).toBe('closed');
});

it('is refused where somebody else moved the job meanwhile, and before the unit is here', async () => {
  const jobId = await assessedJob(world, NOW);
  const version = (await versionOf(jobId)) - 1;
  const asked = { jobId, why: 'cannot-repair', reason: 'No chip.', actor: BENCH, now: NOW } as const;
  await expect(stopRepair({ ...asked, version })).rejects.toMatchObject({ code: 'conflict' });
  await takeMove(jobId, 'start-bench', NOW);
  await stop(jobId, 'cannot-repair');
  await expect(stopRepair({ ...asked, version: await versionOf(jobId) })).rejects.toMatchObject({
    code: 'conflict',
  });
});
