/** Fills the database of DATABASE_URL and prints its readings as JSON: `node --import tsx … measure-process.ts JOBS` */
import { config } from '@/lib/config';
import { disconnect } from '@/lib/db/client';
import { migrate } from '@/lib/db/migrate';
import { onServer } from '@/lib/db/server';
import { countingQueries } from './counted';
import type { Measured } from './measure';
import { openWorkshop } from './open-workshop';
import { pageReadings } from './readings';
import { returnsReadings } from './returns';
import { seedMany } from './seed-many';

const now = new Date();
const jobs = Number(process.argv[2]);
await migrate(config.databaseUrl);
await openWorkshop(now);
const began = performance.now();
await onServer(config.databaseUrl, (client) => seedMany(client, { jobs, seed: 1, now }));
console.error(`${jobs} jobs written in ${((performance.now() - began) / 1000).toFixed(1)} s`);

const measured: Measured[] = [];
const readings = [
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
  times.sort((a, b) => a - b);
  const at = (share: number) => times[Math.floor(share * (times.length - 1))] ?? 0;
  measured.push({ page, p50: at(0.5), p95: at(0.95), queries });
}
await disconnect();
console.log(JSON.stringify(measured));
