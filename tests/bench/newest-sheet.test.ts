import { beforeEach, expect, test } from 'vitest';
import { recordCheck } from '@/lib/bench/record-check';
import { earlierEntries } from '@/lib/bench/sheet-records';
import { takeNewestSheet } from '@/lib/bench/take-newest-sheet';
import { replacing } from '@/lib/catalogue/rules/sheet-changes';
import { saveCheckSheet } from '@/lib/catalogue/save-check-sheet';
import { readCheck } from '@/lib/catalogue/stored';
import { factsOf } from '@/lib/jobs/facts';
import { recordWork } from '@/lib/jobs/record-work';
import { mayTakeNewestSheet } from '@/lib/jobs/rules/guards';
import { useDatabase } from '@/tests/database';
import { assessedJob, takeMove } from '@/tests/makers/course';
import { jobNow } from '@/tests/makers/walk';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

const now = new Date('2026-11-25T09:00:00Z');

test.each([
  { stage: 'proving', version: 1, newest: 2, answer: 'allowed' },
  { stage: 'on-bench', version: 1, newest: 3, answer: 'allowed' },
  { stage: 'proving', version: 2, newest: 2, answer: 'is-newest' },
  { stage: 'ready', version: 1, newest: 2, answer: 'not-on-the-bench' },
  { stage: 'sent-back', version: 1, newest: 2, answer: 'not-on-the-bench' },
] as const)('at $stage on version $version of $newest: $answer', ({ answer, ...facts }) => {
  const told = mayTakeNewestSheet(facts);
  expect(told.allowed ? 'allowed' : told.reason).toBe(answer);
});

useDatabase();
let world: Awaited<ReturnType<typeof makeWorkshop>>;
let jobId = '';
const begin = madeOnce(async () => {
  const world = await makeWorkshop(now);
  const jobId = await assessedJob(world, now);
  await takeMove(jobId, 'start-bench', now);
  await recordWork({ jobId, text: 'Socket replaced', minutes: 40, actor: BENCH, now });
  await takeMove(jobId, 'prove', now);
  return { world, jobId };
});
beforeEach(async () => {
  ({ world, jobId } = await begin());
}, 30_000);

/** Version 2, with another high limit for the charge voltage. */
async function correctTheSheet() {
  const [voltage] = (await jobNow(jobId)).sheet.checks.map(readCheck);
  if (!voltage) throw new Error('no check');
  const change = replacing(1, { ...voltage, high: 5.5 });
  return saveCheckSheet({ repairId: world.repairId, basedOn: 1, change, now });
}

async function takeIt(sheetVersion: number) {
  const { version } = await jobNow(jobId);
  await takeNewestSheet({ jobId, version, sheetVersion, actor: OWNER, now });
}

async function read(reading: number) {
  const [voltage] = (await jobNow(jobId)).sheet.checks;
  return recordCheck({ jobId, checkId: voltage?.id ?? '', given: { reading }, note: '', actor: BENCH, now });
}

test('a job booked under a wrong limit is proved on the corrected sheet, and what was entered stays', async () => {
  expect(await read(5.4)).toEqual({ isPassed: false });
  await correctTheSheet();
  await takeIt(2);
  const job = await jobNow(jobId);
  expect(job.sheet.version).toBe(2);
  expect(factsOf(job)).toMatchObject({ checksFailed: 0, checksMissing: 2 });
  expect(job.events.at(-1)).toMatchObject({ kind: 'sheet-renewed', data: { from: 1, to: 2 } });
  expect(await earlierEntries(job)).toMatchObject([
    { reading: 5.4, isPassed: false, check: { label: 'Charge voltage', unit: 'V', sheet: { version: 1 } } },
  ]);
  expect(await read(5.4)).toEqual({ isPassed: true });
  expect(factsOf(await jobNow(jobId)).checksMissing).toBe(1);
});

test('nothing moves to a version nobody saw, twice, or without a newer one', async () => {
  await expect(takeIt(1)).rejects.toMatchObject({ code: 'conflict' });
  await correctTheSheet();
  await expect(takeIt(3)).rejects.toMatchObject({ message: expect.stringContaining('version 2') });
  await takeIt(2);
  await expect(takeIt(2)).rejects.toMatchObject({ message: expect.stringContaining('is on the newest') });
  expect((await jobNow(jobId)).events.filter(({ kind }) => kind === 'sheet-renewed')).toHaveLength(1);
});
