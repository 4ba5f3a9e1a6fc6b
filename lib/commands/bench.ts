/**
 * `npm run bench [-- --jobs=1000,100000 --repairs=5000 --only=pages,booking --database=server,embedded --app=FOLDER]`: fills
 * databases with made-up jobs, few and many, and prints one table of what pages, readings, a booking and certificates take, against a bare
 * page, fewer jobs, bare SQL and a bare document; all in turn, so that both sides of a ratio carry the same load. Made up all.
 * With `--app` the built copy of the app is kept there for the next run. `--short` measures what needs no pages, on few jobs of a server.
 * Ends with status 1 when a part broke or sent more statements than are aimed at; a time that is not reached is only told.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import path from 'node:path';
import { databaseUrl, onServer } from '@/lib/db/server';
import { readAsked } from './bench/asked-for';
import { buildCopy, copyApp } from './bench/bench-app';
import { type Figure, printTable } from './bench/figures';
import { measureAll, runStep } from './bench/measure-all';
import { startThrowawayPostgres } from './throwaway-postgres';

const asked = readAsked();
process.env['AUTH_SECRET'] ??= 'only for measuring, only for measuring';
process.env['DEMO'] = 'on';
const [few = 0, many = 0] = asked.jobs;
const folder = mkdtempSync(path.join(tmpdir(), 'mendpost-bench-data-'));
let built: Promise<string> | undefined;
const app = () => (built ??= buildApp(asked.app ?? path.join(folder, 'app')));
const load = () => loadavg()[0]?.toFixed(1);

const columns: { head: string; figures: Figure[] }[] = [];
const closers = [() => rmSync(folder, { recursive: true, force: true })];
// A run that breaks off still shows what it has, and leaves nothing behind.
process.on('exit', () => {
  printTable(columns);
  console.log(`\nEnded at a load average of ${load()}.`);
  for (const close of closers.reverse()) close();
});
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => process.exit(1));

console.log(`${few} and ${many} jobs, begun at a load average of ${load()}.\n`);
for (const kind of asked.database) await measureOn(kind);
if (asked.only.includes('certificates')) {
  const tell = newColumn('no database');
  for (const figure of await runStep('certificates', {}, [String(asked.certificates)])) tell(figure);
}
const faults = columns.flatMap(({ figures }) => figures).filter(({ isFault }) => isFault);
for (const { what, value } of faults) console.error(`Fault: ${what}: ${value}`);
process.exitCode = faults.length > 0 ? 1 : 0;

function newColumn(head: string): (figure: Figure) => void {
  const figures: Figure[] = [];
  columns.push({ head, figures });
  return (figure) => {
    console.error(`  ${figure.what}: ${figure.value}`);
    figures.push(figure);
  };
}

async function buildApp(copy: string): Promise<string> {
  copyApp(copy);
  await buildCopy(copy);
  return copy;
}

async function measureOn(kind: 'server' | 'embedded'): Promise<void> {
  console.error(`on ${kind}`);
  const server = kind === 'server' ? await startThrowawayPostgres() : undefined;
  if (server) closers.push(server.stop);
  const place = async (name: string) => {
    if (server) await onServer(server.url, (client) => client.query(`CREATE DATABASE ${name}`));
    return {
      DATABASE_URL: server ? databaseUrl(server.url, name) : '',
      DATA_DIR: path.join(folder, kind, name),
    };
  };
  const { repairs, only: parts, port } = asked;
  await measureAll({ sizes: [few, many], repairs, parts, place, log: server, app, port }, newColumn(kind));
}
