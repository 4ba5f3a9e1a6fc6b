import { afterAll, beforeAll, expect, test } from 'vitest';
import { config } from '@/lib/config';
import { db } from '@/lib/db/client';
import { onServer } from '@/lib/db/server';
import { resetDatabase, useDatabase } from '@/tests/database';
import { makeBooking } from '@/tests/makers/job';
import { makeWorkshop, OWNER } from '@/tests/makers/workshop';
import { everythingKept, type Kept } from '@/tests/world/kept';
import { madeOnce } from '@/tests/world/made-once';

const now = new Date('2026-11-25T09:00:00Z');
const kept = () => everythingKept({ databaseUrl: config.databaseUrl, dataDir: '' });
let times = 0;
const begin = madeOnce(async () => {
  times += 1;
  await count();
  const { repairId } = await makeWorkshop(now);
  return { ...(await makeBooking({ repairId, now })), repairId };
});

useDatabase();
let made: Awaited<ReturnType<typeof begin>>;
let rows: Kept;
let counters: unknown;
let queued = 0;
// No table of the program counts by a sequence today.
beforeAll(async () => {
  await run('create sequence only_here');
  made = await begin();
  [rows, counters, queued] = [await kept(), await readCounters(), await countQueued()];
}, 60_000);

afterAll(() => run('drop sequence only_here'));

test('rows, counters and the queue are put back as they were made', async () => {
  expect(queued).toBeGreaterThan(0);
  await makeBooking({ repairId: made.repairId, now });
  await db.user.delete({ where: { id: OWNER.id } });
  await count();
  expect(await kept()).not.toEqual(rows);
  expect(await readCounters()).not.toEqual(counters);

  const again = await begin();
  expect(times).toBe(1);
  expect(again).toEqual(made);
  expect(again).not.toBe(made);
  expect(await kept()).toEqual(rows);
  expect(await readCounters()).toEqual(counters);
  expect(await countQueued()).toBe(queued);
});

test('what the database refuses, it refuses of rows that were put back', async () => {
  await begin();
  await expect(run('delete from job_event')).rejects.toThrow(/kept for good/);
  await expect(run('delete from repair')).rejects.toThrow(/foreign key/i);
});

test('an emptied database holds nothing and counts from the beginning', async () => {
  await begin();
  await resetDatabase();
  expect(new Set((await kept()).values()).size).toBe(1);
  expect(await countQueued()).toBe(0);
  expect(await readCounters()).toEqual([{ sequencename: 'only_here', last_value: null }]);
  await expect(
    db.model.create({ data: { familyId: 'none', slug: 's', maker: 'm', name: 'n', battery: 'none' } }),
  ).rejects.toMatchObject({ code: 'P2003' });
});

function run(sql: string): Promise<Record<string, unknown>[]> {
  return onServer(config.databaseUrl, async (client) => (await client.query(sql)).rows);
}

const count = () => run(`select nextval('only_here')`);

function readCounters() {
  return run(`select sequencename, last_value from pg_sequences where schemaname = 'public'`);
}

async function countQueued(): Promise<number> {
  const [row] = await run('select count(*) from pgboss.job');
  return Number(row?.['count']);
}
