/**
 * `npm run bench [-- --jobs=1000,100000 --only=pages,booking --database=embedded]`: fills two databases with made-up jobs, few
 * and many, and prints what pages and readings take on both, how much that is beyond a bare page, bare SQL and a bare
 * document, and what was aimed at. Ratios are of one run.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { databaseUrl, onServer } from '@/lib/db/server';
import { type BenchPart, measureAll, PARTS } from './bench/measure-all';
import { startThrowawayPostgres } from './throwaway-postgres';

const { values } = parseArgs({
  options: {
    jobs: { type: 'string', default: '1000,100000' },
    only: { type: 'string', default: PARTS.join(',') },
    database: { type: 'string', default: 'server' },
    port: { type: 'string', default: '3160' },
    app: { type: 'string' },
  },
});
const sizes = values.jobs.split(',').map(Number);
if (sizes.length === 1) sizes.unshift(1000);
const [few = 0, many = 0] = sizes;
const parts = values.only.split(',');
const refuse = (sentence: string): never => {
  console.error(sentence);
  process.exit(1);
};
if (sizes.length > 2 || sizes.some((jobs) => !Number.isSafeInteger(jobs) || jobs < 200))
  refuse('--jobs is one or two whole numbers of 200 or more, such as 1000,100000.');
const isPart = (name: string): name is BenchPart => PARTS.some((part) => part === name);
if (!parts.every(isPart)) refuse(`--only is one or more of ${PARTS.join(', ')}.`);
if (!['server', 'embedded'].includes(values.database)) refuse('--database is server or embedded.');

process.env['AUTH_SECRET'] ??= 'only for measuring, only for measuring';
process.env['DEMO'] = 'on';
const folder = mkdtempSync(path.join(tmpdir(), 'mendpost-bench-data-'));
const server = values.database === 'server' ? await startThrowawayPostgres() : undefined;
try {
  const place = async (name: string) => {
    if (server) await onServer(server.url, (client) => client.query(`CREATE DATABASE ${name}`));
    return {
      DATABASE_URL: server ? databaseUrl(server.url, name) : '',
      DATA_DIR: path.join(folder, name),
    };
  };
  await measureAll({
    sizes: [few, many],
    parts: parts.filter(isPart),
    place,
    server,
    port: Number(values.port),
    app: values.app,
  });
} finally {
  server?.stop();
  rmSync(folder, { recursive: true, force: true });
}
