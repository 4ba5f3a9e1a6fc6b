import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Client } from 'pg';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { onServer } from '@/lib/db/server';
import { useDatabase } from '@/tests/database';

useDatabase();

const url = () => process.env['DATABASE_URL'] ?? '';
const planted = '20991231235959_planted';
let house = '';

/** The program in a folder of its own, with the same files but for its migrations, so that one can be planted. */
beforeEach(() => {
  house = mkdtempSync(path.join(tmpdir(), 'mendpost-planted-'));
  for (const name of readdirSync('.')) {
    if (['lib', 'node_modules', 'tsconfig.json', 'package.json'].includes(name))
      symlinkSync(path.resolve(name), path.join(house, name));
  }
  mkdirSync(path.join(house, 'prisma'));
  cpSync('prisma/schema', path.join(house, 'prisma/schema'), { recursive: true });
  cpSync('prisma/migrations', path.join(house, 'prisma/migrations'), { recursive: true });
});
afterEach(async () => {
  rmSync(house, { recursive: true });
  await onServer(url(), (client) =>
    client.query(
      `drop table if exists planted; delete from _prisma_migrations where migration_name = '${planted}'`,
    ),
  );
});

function plant(sql: string): void {
  const folder = path.join(house, 'prisma/migrations', planted);
  mkdirSync(folder, { recursive: true });
  writeFileSync(path.join(folder, 'migration.sql'), sql);
}

const work = `import('@/lib/db/migrate').then(({ migrate }) => migrate(process.env.DATABASE_URL)).then(
  (names) => console.log(JSON.stringify(names)),
  (error) => { console.error(error.message); process.exit(1); })`;

function migrateThere() {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', '-e', work], {
    cwd: house,
    encoding: 'utf8',
    env: { ...process.env, DATABASE_URL: url() },
  });
  return { status, stdout: stdout.trim(), stderr: stderr.trim() };
}

async function standing(): Promise<{ planted: string | null; records: number }> {
  return onServer(url(), async (client: Client) => {
    const { rows } = await client.query(
      `select to_regclass('public.planted')::text as planted,
        (select count(*)::int from _prisma_migrations where migration_name = $1) as records`,
      [planted],
    );
    return rows[0];
  });
}

test('a migration that fails half way says so in one line, leaves nothing, and goes through when it is mended', async () => {
  plant('create table planted (n int); insert into planted values (1); select 1 / 0; drop table job;');
  const failed = migrateThere();
  expect(failed.status).toBe(1);
  expect(failed.stderr).toBe(`The migration ${planted} failed, and nothing of it was kept: division by zero`);
  expect(await standing()).toEqual({ planted: null, records: 0 });

  plant('create table planted (n int); insert into planted values (1);');
  const mended = migrateThere();
  expect(mended.stderr).toBe('');
  expect(mended.stdout).toBe(JSON.stringify([planted]));
  expect(await standing()).toEqual({ planted: 'planted', records: 1 });
  expect(migrateThere().stdout).toBe('[]');
}, 60_000);

test('a record without an end, as a killed engine leaves it, keeps no start from going on', async () => {
  plant('create table planted (n int);');
  await onServer(url(), (client) =>
    client.query(
      `insert into _prisma_migrations (id, checksum, migration_name) values ('left-behind', 'none', $1)`,
      [planted],
    ),
  );
  expect(migrateThere()).toMatchObject({ status: 0, stdout: JSON.stringify([planted]), stderr: '' });
  expect((await standing()).planted).toBe('planted');
}, 60_000);
