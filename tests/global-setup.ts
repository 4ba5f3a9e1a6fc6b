import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { TestProject } from 'vitest/node';
import { generateClient, hashFolder } from '@/lib/commands/generate-client';
import { databaseUrl, isLocalDatabase, onServer } from '@/lib/db/server';

export type World = { folder: string } & (
  | { kind: 'embedded'; template: string; owner: number }
  | { kind: 'server'; url: string; run: string }
);

declare module 'vitest' {
  export interface ProvidedContext {
    world: World;
  }
}

/** Makes one migrated database; a worker makes its own copy of it when a test file asks for a database. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  generateClient();
  const folder = mkdtempSync(path.join(tmpdir(), 'mendpost-tests-'));
  const url = process.env['TEST_DATABASE_URL'];
  const world = url ? await serverWorld(folder, url, project.name) : await embeddedWorld(folder);
  project.provide('world', world);
  return async () => {
    if (world.kind === 'server') await dropDatabases(world.url, world.run);
    else killDatabases(folder);
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  };
}

async function embeddedWorld(folder: string): Promise<World> {
  const cache = path.resolve('node_modules/.cache/mendpost');
  const template = path.join(
    cache,
    `template-with-queue-${hashFolder(path.resolve('prisma/migrations')).slice(0, 16)}`,
  );
  if (!existsSync(template)) await makeTemplate(cache, template);
  return { kind: 'embedded', folder, template, owner: process.pid };
}

/** Two test runs may make it at once: the rename lets one win, and both copies are the same. */
async function makeTemplate(cache: string, template: string): Promise<void> {
  const { startEmbedded } = await import('@/lib/db/embedded');
  const { migrate } = await import('@/lib/db/migrate');
  const { prepareQueue } = await import('@/lib/mail/boss');
  const draft = mkdtempSync(path.join(tmpdir(), 'mendpost-template-'));
  const embedded = await startEmbedded(draft);
  await migrate(embedded.url);
  await prepareQueue({ connectionString: embedded.url });
  await embedded.stop();
  mkdirSync(cache, { recursive: true });
  const ready = mkdtempSync(path.join(cache, 'draft-'));
  cpSync(path.join(draft, 'database'), ready, { recursive: true });
  rmSync(draft, { recursive: true });
  try {
    renameSync(ready, template);
  } catch {
    rmSync(ready, { recursive: true });
  }
}

function killDatabases(folder: string): void {
  for (const name of readdirSync(folder)) {
    const file = path.join(folder, name, 'pid');
    if (!existsSync(file)) continue;
    try {
      process.kill(Number(readFileSync(file, 'utf8')), 'SIGKILL');
    } catch {
      // It has ended already.
    }
  }
}

async function serverWorld(folder: string, url: string, project: string): Promise<World> {
  if (!isLocalDatabase(url)) {
    throw new Error('TEST_DATABASE_URL is not on this machine: tests empty the database they use');
  }
  const { migrate } = await import('@/lib/db/migrate');
  const { prepareQueue } = await import('@/lib/mail/boss');
  const run = `mendpost_test_${process.pid}_${project}`;
  await dropDatabases(url, run);
  await onServer(url, (client) => client.query(`create database ${run}_template`));
  await migrate(databaseUrl(url, `${run}_template`));
  await prepareQueue({ connectionString: databaseUrl(url, `${run}_template`) });
  return { kind: 'server', folder, url, run };
}

function dropDatabases(url: string, run: string): Promise<void> {
  return onServer(url, async (client) => {
    const { rows } = await client.query<{ datname: string }>(
      'select datname from pg_database where starts_with(datname, $1)',
      [`${run}_`],
    );
    for (const { datname } of rows) await client.query(`drop database ${datname} with (force)`);
  });
}
