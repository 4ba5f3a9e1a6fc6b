/**
 * Fills the database of its place with so many jobs and repairs; with `timed` it then times readings of it, one for each
 * message.
 */
import { z } from 'zod';
import { config } from '@/lib/config';
import { disconnect } from '@/lib/db/client';
import { startEmbedded } from '@/lib/db/embedded';
import { migrate } from '@/lib/db/migrate';
import { onServer } from '@/lib/db/server';
import { countingQueries } from './counted';
import type { Most } from './figures';
import type { Filling, KnownReading } from './filled';
import { listRepairs } from './list-repairs';
import { openWorkshop, workshopSigner } from './open-workshop';
import { pageReadings } from './readings';
import { returnsReadings } from './returns';
import { answer } from './run-step';
import { jobSamples } from './samples';
import { seedMany } from './seed-many';

const now = new Date();
const [jobs = 0, repairs = 0] = process.argv.slice(2, 4).map(Number);
const isTimed = process.argv[4] === 'timed';
const embedded = config.isEmbedded ? await startEmbedded(config.dataDir) : undefined;
await migrate(config.databaseUrl);
await openWorkshop(now);
const sign = await workshopSigner(now);
const began = performance.now();
await onServer(config.databaseUrl, async (client) => {
  await seedMany(client, { jobs, seed: 1, now, sign });
  await listRepairs(client, { repairs, now });
});
console.error(`${jobs} jobs written in ${((performance.now() - began) / 1000).toFixed(1)} s`);

const of =
  (most: Most, runs: number) => (reading: { page: string; read: (i: number) => Promise<unknown> }) => ({
    ...reading,
    most,
    runs,
  });
const readings = !isTimed
  ? []
  : [
      // Their times have the pages' own aims; statements are counted here too, where no page is asked.
      ...(await pageReadings(now)).map(of({ statements: 6 }, 60)),
      ...(await returnsReadings(now)).map(of({ ms: 400 }, 11)),
    ];
const known: KnownReading[] = [];
for (const { read, page, runs, most } of readings) {
  for (let i = 0; i < 5; i += 1) await read(i);
  const { queries } = await countingQueries(() => read(0));
  known.push({ page, runs, most, queries });
}

const asked = z.object({ reading: z.number().int(), i: z.number().int() });
process.on('message', async (message) => {
  const { reading, i } = asked.parse(message);
  const from = performance.now();
  await readings[reading]?.read(i);
  answer({ took: performance.now() - from });
});
process.on('disconnect', async () => {
  await disconnect();
  await embedded?.stop();
  process.exit(0);
});
answer({ samples: await jobSamples(), readings: known } satisfies Filling);
