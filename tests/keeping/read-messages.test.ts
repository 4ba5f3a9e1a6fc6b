import { beforeEach, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { readMessages } from '@/lib/jobs/read-messages';
import { sendMessage } from '@/lib/jobs/send-message';
import { resetDatabase, useDatabase } from '@/tests/database';
import { versionOf } from '@/tests/makers/course';
import { makeBooking } from '@/tests/makers/job';
import { makeRequest } from '@/tests/makers/quote';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

const NOW = new Date('2026-11-25T09:00:00Z');
const LATER = new Date('2026-11-25T11:30:00Z');

useDatabase();
beforeEach(resetDatabase);

async function talk() {
  const world = await makeWorkshop(NOW);
  const { jobId } = await makeBooking({ repairId: world.repairId, now: NOW });
  await sendMessage({ jobId, text: 'Is it here?', actor: { kind: 'customer' }, now: NOW });
  await sendMessage({ jobId, text: 'It came today.', actor: BENCH, now: NOW });
  return jobId;
}

async function readOf(jobId: string) {
  const rows = await db.message.findMany({ where: { jobId }, orderBy: { author: 'asc' } });
  return rows.map(({ author, readAt }) => [author, readAt]);
}

it('each side reads what the other wrote, and not its own', async () => {
  const jobId = await talk();
  await readMessages({ about: { jobId }, reader: 'staff', now: LATER });
  expect(await readOf(jobId)).toEqual([
    ['customer', LATER],
    ['staff', null],
  ]);
  await readMessages({ about: { jobId }, reader: 'customer', now: LATER });
  expect(await readOf(jobId)).toEqual([
    ['customer', LATER],
    ['staff', LATER],
  ]);
});

it('the first time counts, and the job itself does not change by it', async () => {
  const jobId = await talk();
  const version = await versionOf(jobId);
  await readMessages({ about: { jobId }, reader: 'staff', now: NOW });
  await readMessages({ about: { jobId }, reader: 'staff', now: LATER });
  expect((await readOf(jobId))[0]).toEqual(['customer', NOW]);
  expect(await versionOf(jobId)).toBe(version);
});

it('on one job nothing of another, or of a quote, is read', async () => {
  const jobId = await talk();
  const { quoteId } = await makeRequest({ now: NOW });
  await db.message.create({ data: { quoteId, author: 'customer', text: 'Hello?', at: NOW } });
  const other = await makeBooking({
    repairId: (await db.repair.findFirstOrThrow()).id,
    now: NOW,
    serial: 'HW2-2',
  });
  await readMessages({ about: { jobId: other.jobId }, reader: 'staff', now: LATER });
  await readMessages({ about: { quoteId }, reader: 'customer', now: LATER });
  expect(await db.message.count({ where: { readAt: { not: null } } })).toBe(0);
  expect(await readOf(jobId)).toHaveLength(2);
});
