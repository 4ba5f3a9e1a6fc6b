import { spawn } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Client, Pool } from 'pg';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { type Embedded, startEmbedded } from '@/lib/db/embedded';
import { embeddedUrl, socketFolderOf } from '@/lib/db/embedded-place';

let folder = '';
let embedded: Embedded;
beforeAll(async () => {
  folder = newFolder();
  embedded = await startEmbedded(folder);
}, 60_000);
afterAll(async () => {
  await embedded.stop();
  rmSync(folder, { recursive: true });
});

/** A data folder, with the tables in it where the test run has made them already: making a database takes seconds. */
function newFolder(): string {
  const made = mkdtempSync(path.join(tmpdir(), 'mendpost-embedded-'));
  const world = inject('world');
  if (world.kind === 'embedded') cpSync(world.template, path.join(made, 'database'), { recursive: true });
  return made;
}

test('only this user can reach the database', () => {
  expect(statSync(socketFolderOf(folder)).mode & 0o777).toBe(0o700);
  expect(statSync(path.join(folder, 'database')).mode & 0o077).toBe(0);
});

test('a database that is being served is not opened a second time', async () => {
  await expect(startEmbedded(folder)).rejects.toThrow('Another process serves the database');
});

test('ten busy connections each get their own answers', async () => {
  const pool = new Pool({ connectionString: embedded.url, max: 10 });
  const long = 'x'.repeat(300_000);
  const ask = async (worker: number) => {
    for (let turn = 0; turn < 40; turn += 1) {
      const mark = worker * 1000 + turn;
      const { rows } = await pool.query(
        `select $1::int as given, ${mark} as written, length($2::text) as size`,
        [mark, long.slice(0, worker * turn * 500)],
      );
      expect(rows).toEqual([{ given: mark, written: mark, size: worker * turn * 500 }]);
    }
  };
  await Promise.all(Array.from({ length: 10 }, (_, worker) => ask(worker)));
  await pool.end();
});

test('a transaction keeps the others waiting and is not mixed with them', async () => {
  const pool = new Pool({ connectionString: embedded.url, max: 5 });
  await pool.query('create table counter (n int); insert into counter values (0)');
  const add = async () => {
    const client = await pool.connect();
    await client.query('begin');
    const { rows } = await client.query('select n from counter');
    await client.query('update counter set n = $1', [rows[0].n + 1]);
    await client.query('commit');
    client.release();
  };
  await Promise.all(Array.from({ length: 30 }, add));
  expect((await pool.query('select n from counter')).rows).toEqual([{ n: 30 }]);
  await pool.end();
});

test('a client that vanishes in a transaction holds nobody up and leaves nothing', async () => {
  const gone = new Client({ connectionString: embedded.url });
  gone.on('error', () => {});
  await gone.connect();
  await gone.query('create table if not exists kept (n int)');
  await gone.query('begin');
  await gone.query('insert into kept values (1)');
  const other = new Client({ connectionString: embedded.url });
  const connected = other.connect();
  const socket: unknown = Reflect.get(Reflect.get(gone, 'connection'), 'stream');
  if (socket instanceof Object && 'destroy' in socket && typeof socket.destroy === 'function')
    socket.destroy();
  await connected;
  expect((await other.query('select n from kept')).rows).toEqual([]);
  await other.end();
});

test('a failed statement fails for its sender alone', async () => {
  const pool = new Pool({ connectionString: embedded.url, max: 4 });
  const results = await Promise.allSettled(
    Array.from({ length: 20 }, (_, n) =>
      pool.query(n % 2 ? 'select nonsense' : 'select $1::int as n', n % 2 ? [] : [n]),
    ),
  );
  expect(results.map(({ status }) => status)).toEqual(
    Array.from({ length: 20 }, (_, n) => (n % 2 ? 'rejected' : 'fulfilled')),
  );
  await pool.end();
});

test('what was acknowledged is there after kill -9', async () => {
  const home = newFolder();
  const child = spawn(
    process.execPath,
    ['--import', 'tsx', 'tests/world/embedded-process.ts', home, String(process.pid)],
    { stdio: ['ignore', 'pipe', 'inherit'] },
  );
  const gone = new Promise((resolve) => child.once('exit', resolve));
  await new Promise((resolve) => child.stdout.once('data', resolve));
  const client = new Client({ connectionString: embeddedUrl(home) });
  client.on('error', () => {});
  await client.connect();
  await client.query('create table row (n int)');
  let acknowledged = 0;
  const writing = (async () => {
    for (;;) {
      await client.query('insert into row values ($1)', [acknowledged + 1]);
      acknowledged += 1;
      if (acknowledged === 200) child.kill('SIGKILL');
    }
  })();
  await expect(writing).rejects.toThrow();
  // The connection ends a moment before the process does; nobody starts on its folder before.
  await gone;

  const reopened = await startEmbedded(home);
  const reader = new Client({ connectionString: reopened.url });
  await reader.connect();
  const { rows } = await reader.query<{ n: number }>('select count(*)::int as n from row');
  expect(acknowledged).toBeGreaterThanOrEqual(200);
  expect(rows[0]?.n).toBeGreaterThanOrEqual(acknowledged);
  await reader.end();
  await reopened.stop();
  rmSync(home, { recursive: true });
}, 60_000);
