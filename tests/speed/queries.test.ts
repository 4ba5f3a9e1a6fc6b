import { beforeAll, describe, expect, test } from 'vitest';
import { countingQueries } from '@/lib/commands/bench/counted';
import { openWorkshop } from '@/lib/commands/bench/open-workshop';
import { pageReadings, type Reading } from '@/lib/commands/bench/readings';
import { seedMany } from '@/lib/commands/bench/seed-many';
import { config } from '@/lib/config';
import { db } from '@/lib/db/client';
import { onServer } from '@/lib/db/server';
import { useDatabase } from '@/tests/database';

useDatabase();

const now = new Date('2026-11-25T10:30:00Z');
let readings: Reading[];

beforeAll(async () => {
  await openWorkshop(now);
  await onServer(config.databaseUrl, (client) => seedMany(client, { jobs: 100, seed: 3, now }));
  // Until when the certificate of a claim covers is read only where such a unit is with us.
  const claimed = await db.claim.findFirstOrThrow({ select: { jobId: true } });
  await db.job.update({ where: { id: claimed.jobId }, data: { stage: 'assessing' } });
  readings = await pageReadings(now);
}, 60_000);

/** So that a reading inside a loop is noticed before a workshop has enough jobs to feel it. */
const MOST = [
  ['tracking', 1],
  ['job by its private link', 2],
  ['Today', 5],
  ['search by part of a serial', 3],
  ['find by part of a serial', 1],
] as const;

describe('queries of a reading', () => {
  test.each(MOST)('%s sends at most %i', async (page, most) => {
    const reading = readings.find((each) => each.page === page);
    await reading?.read(0);
    const { queries } = await countingQueries(async () => reading?.read(1));
    expect(queries).toBeGreaterThan(0);
    expect(queries).toBeLessThanOrEqual(most);
  });

  test('a reading in a loop is counted once for each turn', async () => {
    const { queries } = await countingQueries(async () => {
      for (let i = 0; i < 7; i += 1) await db.job.count();
    });
    expect(queries).toBe(7);
  });
});
