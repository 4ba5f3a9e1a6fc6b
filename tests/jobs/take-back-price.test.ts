import { beforeAll, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { recordFinding } from '@/lib/jobs/record-finding';
import { readJob } from '@/lib/jobs/records';
import { endedPrice, heldPrice } from '@/lib/jobs/rules/asked-price';
import { nextForCustomer } from '@/lib/jobs/rules/next-step';
import { takeBackEntry } from '@/lib/jobs/take-back-entry';
import { readContent } from '@/lib/mail/rules/content';
import { attempt } from '@/lib/outcome';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { lapsePrices } from '@/lib/quotes/write-lapses';
import { writeOffer } from '@/lib/quotes/write-offer';
import { useDatabase } from '@/tests/database';
import { assessedJob, takeMove, versionOf } from '@/tests/makers/course';
import { askPrice } from '@/tests/makers/offer';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

const NOW = new Date('2026-11-25T09:00:00Z');
const LATER = new Date('2027-03-01T09:00:00Z');
const WHY = 'We added it up wrongly.';

useDatabase();
let world: Awaited<ReturnType<typeof makeWorkshop>>;
beforeAll(async () => {
  world = await makeWorkshop(NOW);
}, 30_000);

async function asked() {
  const jobId = await assessedJob(world, NOW);
  await askPrice(jobId, NOW);
  return jobId;
}

async function write(jobId: string, amount: number, over: { customerAsked?: boolean; now?: Date } = {}) {
  return writeOffer({
    jobId,
    version: await versionOf(jobId),
    lines: [{ kind: 'labour', description: 'Pad rebuilt', amount, category: 'S', rateBps: 2000 }],
    reason: 'A pad is lifted.',
    onYes: '',
    onNo: '',
    actor: BENCH,
    now: NOW,
    ...over,
  });
}

const finding = (jobId: string) =>
  recordFinding({ jobId, text: 'A second pad lifted', photos: [], actor: BENCH, now: NOW });

async function read(jobId: string) {
  const job = await readJob({ id: jobId });
  if (!job) throw new Error('there is no such job');
  return job;
}

it('a price that staff took back cannot be agreed to any more, and another can be written', async () => {
  const jobId = await asked();
  await takeMove(jobId, 'take-back-price', NOW, WHY);
  const late = await attempt(() =>
    decideOffer({
      jobId,
      revision: 2,
      decision: 'accepted',
      actor: { kind: 'customer' },
      now: NOW,
    }),
  );
  expect(late.ok ? 'agreed' : late.refusal.code).toBe('conflict');
  expect(await write(jobId, 8400)).toEqual({ revision: 3, gross: 8400 });
  const job = await read(jobId);
  expect(job.stage).toBe('assessing');
  expect(job.quotes[0]?.revisions.map((revision) => revision.state)).toEqual([
    'accepted',
    'replaced',
    'sent',
  ]);
});

it('the customer is told by mail and on the page that a price was taken back, and why', async () => {
  const jobId = await asked();
  await expect(takeMove(jobId, 'take-back-price', NOW)).rejects.toMatchObject({ field: 'note' });
  expect((await read(jobId)).stage).toBe('awaiting-approval');
  await takeMove(jobId, 'take-back-price', NOW, WHY);
  const job = await read(jobId);
  const until = job.quotes[0]?.revisions[1]?.validUntil.toISOString().slice(0, 10);
  const mail = await db.mail.findFirstOrThrow({ where: { jobId, template: 'price-taken-back' } });
  expect(readContent(mail).data).toEqual({ revision: 2, gross: 9600, reason: WHY, heldUntil: until });
  expect(endedPrice(job.events)).toMatchObject({ revision: 2, how: 'taken-back', reason: WHY });
  await takeMove(jobId, 'start-bench', NOW);
  expect(endedPrice((await read(jobId)).events)).toBeNull();
});

it('a dearer price takes the place of one that was sent only when the customer asked, or another fault was found', async () => {
  const jobId = await asked();
  await takeMove(jobId, 'take-back-price', NOW, WHY);
  await expect(write(jobId, 9700)).rejects.toMatchObject({ code: 'invalid', field: 'customerAsked' });
  await write(jobId, 9700, { customerAsked: true });
  const events = await db.jobEvent.findMany({
    where: { jobId, kind: 'offer-written' },
    orderBy: { version: 'asc' },
  });
  expect(events.map(({ data }) => data)).toEqual([
    { revision: 2, gross: 9600 },
    { revision: 3, gross: 9700, customerAsked: true },
  ]);
  await write(jobId, 9600);
  await expect(write(jobId, 9700)).rejects.toMatchObject({ field: 'customerAsked' });
  await finding(jobId);
  expect(await write(jobId, 12_000)).toMatchObject({ gross: 12_000 });
});

it('a dearer price is not asked for once the finding it rests on was taken back, and is where the customer asked for it', async () => {
  const jobId = await asked();
  await takeMove(jobId, 'take-back-price', NOW, WHY);
  await finding(jobId);
  await write(jobId, 12_000);
  const { findings, version } = await read(jobId);
  const wrong = { what: 'finding', id: findings.at(-1)?.id ?? '', reason: 'It is of another job.' } as const;
  await takeBackEntry({ jobId, version, ...wrong, actor: BENCH, now: NOW });
  await expect(takeMove(jobId, 'ask-approval', NOW)).rejects.toThrow('cannot be higher');
  const { stage, quotes } = await read(jobId);
  expect([stage, quotes[0]?.revisions.at(-1)?.state]).toEqual(['assessing', 'sent']);
  await write(jobId, 12_000, { customerAsked: true });
  await takeMove(jobId, 'ask-approval', NOW);
  expect((await read(jobId)).stage).toBe('awaiting-approval');
});

it('a price that lapsed, was answered or was never sent holds nobody to it', async () => {
  const lapsed = await asked();
  await lapsePrices(LATER);
  const job = await read(lapsed);
  expect(endedPrice(job.events)).toMatchObject({ revision: 2, how: 'lapsed', reason: '' });
  expect(await write(lapsed, 9700)).toMatchObject({ gross: 9700 });

  const answered = await asked();
  const yes = {
    jobId: answered,
    revision: 2,
    decision: 'accepted',
    actor: { kind: 'customer' },
    now: NOW,
  } as const;
  await decideOffer(yes);
  expect(await write(answered, 9700)).toMatchObject({ gross: 9700 });
  expect(await write(answered, 9800)).toMatchObject({ gross: 9800 });

  const taken = await asked();
  await takeMove(taken, 'take-back-price', NOW, WHY);
  const { events, quotes } = await read(taken);
  const revisions = quotes[0]?.revisions ?? [];
  const today = day('2026-11-25');
  expect(heldPrice({ events, revisions, today })?.gross).toBe(9600);
  const contested = { kind: 'claim-contested', data: { claim: 'C7TW3M9HB' }, at: NOW, toStage: 'assessing' };
  expect(heldPrice({ events: [...events, contested], revisions, today })).toBeNull();
  expect(heldPrice({ events, revisions, today: day('2027-03-01') })).toBeNull();
});

it('the page says what became of the price, until when it holds, and how to answer all the same', () => {
  const told = (ended: NonNullable<Parameters<typeof nextForCustomer>[0]['ended']>) =>
    nextForCustomer(
      {
        stage: 'assessing',
        kind: 'repair',
        promisedOn: null,
        owed: null,
        startAfter: null,
        ended,
        offerUntil: null,
        carrier: '',
        transitDays: 5,
        ruling: null,
        hasCertificate: false,
        decision: null,
      },
      'en-GB',
    );
  const lapsed = told({ gross: '£96.00', how: 'lapsed', on: day('2027-01-02'), heldUntil: null });
  expect(lapsed).toContain('it held until Saturday 2 January 2027, and no answer came');
  expect(lapsed).toContain('Want it at that price, or the unit back as it is? Write to us below.');
  const taken = { gross: '£96.00', how: 'taken-back', on: day('2026-12-03') } as const;
  expect(told({ ...taken, heldUntil: day('2027-01-02') })).toContain(
    'Until Saturday 2 January 2027 it is not higher, unless you ask for a change or we find another fault.',
  );
  expect(told({ ...taken, heldUntil: null })).not.toContain('not higher');
});
