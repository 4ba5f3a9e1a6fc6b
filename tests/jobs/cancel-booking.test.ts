import { beforeEach, expect, test } from 'vitest';
import { db } from '@/lib/db/client';
import { moveJob } from '@/lib/jobs/move';
import { sendMessage } from '@/lib/jobs/send-message';
import { attempt } from '@/lib/outcome';
import { resetDatabase, useDatabase } from '@/tests/database';
import { takeIn } from '@/tests/makers/course';
import { makeBooking } from '@/tests/makers/job';
import { jobNow } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

const NOW = new Date('2026-12-01T10:00:00Z');

useDatabase();

let jobId: string;
beforeEach(async () => {
  await resetDatabase();
  const { repairId } = await makeWorkshop(NOW);
  jobId = (await makeBooking({ repairId, now: NOW })).jobId;
}, 60_000);

const cancel = () =>
  attempt(() =>
    moveJob({
      jobId,
      move: 'cancel',
      note: '',
      actor: { kind: 'customer' },
      now: NOW,
    }),
  );

test('a customer cancels whatever else was written meanwhile, and twice is not an error', async () => {
  await sendMessage({ jobId, text: 'Which charger do you send along?', actor: BENCH, now: NOW });
  expect([(await cancel()).ok, (await cancel()).ok]).toEqual([true, true]);
  expect((await jobNow(jobId)).stage).toBe('cancelled');
  const letters = await db.mail.findMany({
    where: { jobId, template: 'job-cancelled' },
    select: { data: true },
  });
  expect(letters).toMatchObject([{ data: { reason: '' } }]);
});

test('a unit that came meanwhile is not cancelled', async () => {
  await takeIn(jobId, NOW);
  const outcome = await cancel();
  expect(outcome.ok ? 'done' : outcome.refusal.code).toBe('conflict');
  expect((await jobNow(jobId)).stage).not.toBe('cancelled');
});

test('staff who cancel from a page that is not fresh are told so', async () => {
  const { version } = await jobNow(jobId);
  await cancel();
  const again = moveJob({ jobId, version, move: 'cancel', note: 'Doubled', actor: BENCH, now: NOW });
  await expect(again).rejects.toThrow(/changed while you had it open/);
});
