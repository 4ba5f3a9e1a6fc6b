import { beforeEach, expect, test } from 'vitest';
import { config } from '@/lib/config';
import { db } from '@/lib/db/client';
import { databaseStanding } from '@/lib/db/pending';
import { roundOnce } from '@/lib/jobs/start-clock';
import { happenings } from '@/lib/metrics/counters';
import { readiness } from '@/lib/serving/readiness';
import { serving } from '@/lib/serving/serving';
import { resetDatabase, useDatabase } from '@/tests/database';

useDatabase();
beforeEach(resetDatabase);

test('a process is ready once every migration of its own is there, not before', async () => {
  const [newest] = await db.$queryRaw<{ name: string }[]>`
    select migration_name as name from _prisma_migrations order by migration_name desc limit 1`;
  await db.$executeRaw`update _prisma_migrations set finished_at = null where migration_name = ${newest?.name}`;
  try {
    expect(await readiness()).toEqual({ isReady: false, status: 'migrations pending' });
  } finally {
    await db.$executeRaw`update _prisma_migrations set finished_at = now() where finished_at is null`;
  }
  expect(await readiness()).toEqual({ isReady: true, status: 'ready' });
});

test('without its database it is not ready', async () => {
  const url = config.databaseUrl;
  config.databaseUrl = 'postgresql://postgres@127.0.0.1:1/nowhere';
  try {
    expect(await databaseStanding()).toBe('not reachable');
    expect(await readiness()).toEqual({ isReady: false, status: 'database not reachable' });
  } finally {
    config.databaseUrl = url;
  }
});

test('once told to stop it is not ready, whatever the database says', async () => {
  serving.isStopping = true;
  expect(await readiness()).toEqual({ isReady: false, status: 'stopping' });
  serving.isStopping = false;
  expect((await readiness()).isReady).toBe(true);
});

test('of three processes whose clock strikes at once one makes the round, and the next hour another', async () => {
  const rounds = async () => {
    const counted = await happenings().get();
    return counted.values.find(({ labels }) => labels.event === 'clock-round')?.value;
  };
  const before = (await rounds()) ?? 0;
  const at = new Date('2026-11-25T09:00:00Z');
  await Promise.all([roundOnce(at), roundOnce(at), roundOnce(at)]);
  expect(await rounds()).toBe(before + 1);
  await roundOnce(new Date('2026-11-25T09:30:00Z'));
  expect(await rounds()).toBe(before + 1);
  await roundOnce(new Date('2026-11-25T10:00:00Z'));
  expect(await rounds()).toBe(before + 2);
  // A clock that ran a year ahead, and was set right.
  await roundOnce(new Date('2027-11-25T10:00:00Z'));
  await roundOnce(new Date('2026-11-25T11:00:00Z'));
  expect(await rounds()).toBe(before + 4);
});
