/**
 * `npm run bench [-- --jobs=100000]`: fills a throwaway PostgreSQL server with a thousand jobs and with many, and prints what
 * the readings behind the busiest pages take on both, and how many queries each sends. All made up.
 */
import { parseArgs } from 'node:util';
import { databaseUrl, onServer } from '@/lib/db/server';
import { startThrowawayPostgres } from './throwaway-postgres';

const { values } = parseArgs({ options: { jobs: { type: 'string', default: '100000' } } });
const many = Number(values.jobs);
if (!Number.isSafeInteger(many) || many < 1000) {
  console.error('--jobs is a whole number of 1000 or more.');
  process.exit(1);
}
process.env['AUTH_SECRET'] ??= 'only for measuring, only for measuring';
process.env['DEMO'] = 'on';

const server = await startThrowawayPostgres();
try {
  const { measureAt, printTable } = await import('./bench/measure');
  const sizes = [1000, many];
  const measured = [];
  for (const jobs of sizes) {
    const name = `jobs_${jobs}`;
    await onServer(server.url, (client) => client.query(`CREATE DATABASE ${name}`));
    measured.push(await measureAt(databaseUrl(server.url, name), jobs));
  }
  printTable(sizes, measured);
} finally {
  server.stop();
}
