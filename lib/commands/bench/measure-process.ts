/** Fills the database of DATABASE_URL, or of DATA_DIR, and prints its readings as JSON: `… measure-process.ts JOBS [timed]` */
import { config } from '@/lib/config';
import { disconnect } from '@/lib/db/client';
import { startEmbedded } from '@/lib/db/embedded';
import { migrate } from '@/lib/db/migrate';
import { onServer } from '@/lib/db/server';
import { countingQueries } from './counted';
import { atShare } from './figures';
import type { Filled, Measured } from './measure';
import { openWorkshop, workshopSigner } from './open-workshop';
import { pageReadings } from './readings';
import { returnsReadings } from './returns';
import { jobSamples } from './samples';
import { seedMany } from './seed-many';

const now = new Date();
const jobs = Number(process.argv[2]);
const isTimed = process.argv[3] === 'timed';
const embedded = config.isEmbedded ? await startEmbedded(config.dataDir) : undefined;
await migrate(config.databaseUrl);
await openWorkshop(now);
const sign = await workshopSigner(now);
const began = performance.now();
await onServer(config.databaseUrl, (client) => seedMany(client, { jobs, seed: 1, now, sign }));
console.error(`${jobs} jobs written in ${((performance.now() - began) / 1000).toFixed(1)} s`);

const measured: Measured[] = [];
const readings = !isTimed
  ? []
  : [
      ...(await pageReadings(now)).map((reading) => ({ ...reading, runs: 60 })),
      ...(await returnsReadings(now)).map((reading) => ({ ...reading, runs: 11 })),
    ];
for (const { page, read, runs } of readings) {
  for (let i = 0; i < 5; i += 1) await read(i);
  const { queries } = await countingQueries(() => read(0));
  const times: number[] = [];
  for (let i = 0; i < runs; i += 1) {
    const from = performance.now();
    await read(i);
    times.push(performance.now() - from);
  }
  measured.push({ page, p50: atShare(times, 0.5), p95: atShare(times, 0.95), queries });
}
const filled: Filled = { jobs, readings: measured, samples: await jobSamples() };
await disconnect();
await embedded?.stop();
console.log(JSON.stringify(filled));
