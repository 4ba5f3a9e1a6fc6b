import { spawn } from 'node:child_process';
import { cpSync, mkdirSync, rmSync } from 'node:fs';
import { connect } from 'node:net';
import path from 'node:path';
import { afterAll, beforeAll, inject } from 'vitest';
import { socketPathOf } from '@/lib/db/embedded-place';
import { onServer } from '@/lib/db/server';
import type { World } from '@/tests/global-setup';
import { emptyEverything } from '@/tests/world/empty-everything';
import { worker, workerFolder } from '@/tests/world/settings';

/** Gives the test file an empty, migrated database behind lib/db and an empty store; no file sees what another left. */
export function useDatabase(): void {
  beforeAll(async () => {
    rmSync(path.join(workerFolder, 'files'), { recursive: true, force: true });
    const world = inject('world');
    if (world.kind === 'server') await copyOnServer(world);
    else await openEmbedded(world);
  }, 60_000);
  afterAll(async () => {
    const { disconnect } = await import('@/lib/db/client');
    await disconnect();
  });
}

/** Empties every table, for `beforeEach` in files whose tests must not see each other's rows. */
export async function resetDatabase(): Promise<void> {
  await onServer(process.env['DATABASE_URL'] ?? '', (client) => client.query(emptyEverything));
}

/** True where several connections really work at once; tests/races hold only there. */
export function isOnServer(): boolean {
  return inject('world').kind === 'server';
}

async function copyOnServer(world: World & { kind: 'server' }): Promise<void> {
  await onServer(world.url, async (client) => {
    await client.query(`drop database if exists ${world.run}_${worker} with (force)`);
    await client.query(`create database ${world.run}_${worker} template ${world.run}_template`);
  });
}

/** One PGlite per worker, emptied for each file: opening one takes about a second. */
async function openEmbedded(world: World & { kind: 'embedded' }): Promise<void> {
  if (await isListening()) return resetDatabase();
  mkdirSync(workerFolder, { recursive: true });
  cpSync(world.template, path.join(workerFolder, 'database'), { recursive: true });
  const child = spawn(
    process.execPath,
    ['--import', 'tsx', 'tests/world/embedded-process.ts', workerFolder, String(world.owner)],
    { detached: true, stdio: 'ignore' },
  );
  child.unref();
  const end = Date.now() + 50_000;
  while (!(await isListening())) {
    if (Date.now() > end) throw new Error('The embedded test database did not open within 50 seconds');
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

function isListening(): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = connect(socketPathOf(workerFolder));
    socket.on('error', () => resolve(false));
    socket.on('connect', () => {
      socket.destroy();
      resolve(true);
    });
  });
}
