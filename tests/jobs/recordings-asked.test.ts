import { readFile } from 'node:fs/promises';
import { beforeEach, expect, it } from 'vitest';
import { openForm } from '@/app/(front)/certificate/[number]/schema';
import { db } from '@/lib/db/client';
import { DATA_ANSWERS, DATA_NOT_ASKED, dataWords } from '@/lib/jobs/rules/booking';
import { resetDatabase, useDatabase } from '@/tests/database';
import { ADDRESS, makeBooking, SERIAL } from '@/tests/makers/job';
import { jobNow, makeCertificate, makeClaim } from '@/tests/makers/walk';
import { makeWorkshop } from '@/tests/makers/workshop';

useDatabase();
const NOW = new Date('2026-12-03T16:00:00Z');
beforeEach(async () => {
  await resetDatabase();
}, 30_000);

it('a claim is not opened before the customer has said what is on the unit', () => {
  const told = { serial: SERIAL, symptom: 'Does not charge', ...ADDRESS, battery: 'healthy' };
  const missing = openForm.safeParse(told).error?.issues.map(({ path, message }) => [path[0], message]);
  expect(missing).toEqual([['data', 'Choose what applies to your recordings and settings']]);
  for (const data of Object.keys(DATA_ANSWERS))
    expect(openForm.safeParse({ ...told, data }).success).toBe(true);
  // Nobody answers for the customer that they were not asked.
  expect(openForm.safeParse({ ...told, data: DATA_NOT_ASKED }).success).toBe(false);
});

it('a claim keeps the answer that was given, and one from before the question says that it was not asked', async () => {
  const world = await makeWorkshop(NOW);
  const { number } = await makeCertificate(world, NOW);
  const { jobId } = await makeClaim({ number, now: NOW });
  expect((await jobNow(jobId)).dataAnswer).toBe('saved');

  const booked = await makeBooking({ repairId: world.repairId, now: NOW, serial: 'HW2-10481-K' });
  const walkIn = await makeBooking({ repairId: world.repairId, now: NOW, serial: 'HW2-10482-K' });
  await db.job.update({ where: { id: walkIn.jobId }, data: { dataAnswer: 'not-saved' } });
  await db.$executeRaw`ALTER TABLE "job_event" DISABLE TRIGGER USER`;
  await db.$executeRaw`UPDATE "job_event" SET "data" = "data" || '{"isWalkIn": true}' WHERE "jobId" = ${walkIn.jobId} AND "kind" = 'booked'`;
  await db.$executeRaw`ALTER TABLE "job_event" ENABLE TRIGGER USER`;
  const sql = await readFile('prisma/migrations/20261130054700_recordings_not_asked/migration.sql', 'utf8');
  await db.$executeRawUnsafe(sql);
  const kept = async (id: string) => dataWords((await jobNow(id)).dataAnswer);
  expect(await kept(jobId)).toBe('Not asked: treat it as not saved');
  expect(await kept(walkIn.jobId)).toBe('Not asked: treat it as not saved');
  expect(await kept(booked.jobId)).toBe(DATA_ANSWERS.saved);
});
