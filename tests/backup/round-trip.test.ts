import { existsSync, mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, inject, test, vi } from 'vitest';
import { checkBackup } from '@/lib/backup/check-backup';
import { openPlace } from '@/lib/backup/file-place';
import { makeBackup } from '@/lib/backup/make-backup';
import { moveWorkshop } from '@/lib/backup/move-workshop';
import { restoreBackup } from '@/lib/backup/restore-backup';
import { authSecret, config } from '@/lib/config';
import { db } from '@/lib/db/client';
import { startEmbedded } from '@/lib/db/embedded';
import { readMigrations } from '@/lib/db/engine';
import { migrate } from '@/lib/db/migrate';
import { databaseUrl, onServer } from '@/lib/db/server';
import { sendMessage } from '@/lib/jobs/send-message';
import { prepareQueue } from '@/lib/mail/boss';
import { openWorker } from '@/lib/mail/worker';
import { isOnServer, resetDatabase, useDatabase } from '@/tests/database';
import { startMailServer } from '@/tests/mail/mail-server';
import { BENCH } from '@/tests/makers/workshop';
import { worker } from '@/tests/world/settings';
import { destroyFiles, fileFolder, filesOf, fillWorkshop, rowsOf, rulesOf } from './filled';

useDatabase();
// Databases are opened and migrated from nothing, seconds each where much else goes on.
vi.setConfig({ testTimeout: 60_000 });

const now = new Date('2026-11-25T10:30:00Z');
const folder = mkdtempSync(path.join(tmpdir(), 'mendpost-backup-'));
const file = path.join(folder, 'made.tar');
const secret = authSecret();
let before: { rows: Record<string, string>; rules: string[]; files: Record<string, string> };
let stop = async () => {};

async function backup(to: string, hasSecret = true) {
  const files = await openPlace(config.files);
  return makeBackup({ file: to, databaseUrl: config.databaseUrl, secret, hasSecret, files, now });
}

async function restore(from: string, url = config.databaseUrl, filesIn = fileFolder) {
  const files = await openPlace({ kind: 'folder', folder: filesIn });
  return restoreBackup({ file: from, databaseUrl: url, files });
}

/** An empty database beside the one of the tests: embedded, or on the server, where its owner is no superuser. */
async function anotherPlace(kind: 'embedded' | 'server'): Promise<string> {
  if (kind === 'embedded') {
    const embedded = await startEmbedded(mkdtempSync(path.join(folder, 'place-')));
    stop = embedded.stop;
    return embedded.url;
  }
  const world = inject('world');
  if (world.kind !== 'server') throw new Error('needs a server');
  const name = `${world.run}_back_${worker}`;
  await onServer(world.url, async (client) => {
    await client.query(`drop database if exists ${name} with (force)`);
    await client.query(`drop role if exists mendpost_plain_${worker}`);
    await client.query(`create role mendpost_plain_${worker} login nosuperuser`);
    await client.query(`create database ${name} owner mendpost_plain_${worker}`);
  });
  const url = new URL(databaseUrl(world.url, name));
  url.username = `mendpost_plain_${worker}`;
  return url.href;
}

beforeAll(async () => {
  destroyFiles();
  await fillWorkshop(now);
  before = {
    rows: await rowsOf(config.databaseUrl),
    rules: await rulesOf(config.databaseUrl),
    files: filesOf(fileFolder),
  };
  await backup(file);
}, 60_000);

afterAll(async () => {
  await stop();
  rmSync(folder, { recursive: true, force: true });
});

test('what was filled is worth the trouble', () => {
  expect(Object.keys(before.rows).length).toBeGreaterThan(40);
  expect(Object.values(before.rows).filter((row) => !row.startsWith('0 ')).length).toBeGreaterThan(25);
  expect(Object.keys(before.files).length).toBeGreaterThanOrEqual(5);
});

test('a backup is one file that only its owner may read, and nothing is left beside it', async () => {
  expect(statSync(file).mode & 0o777).toBe(0o600);
  expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
  const { manifest } = await checkBackup(file);
  expect({ missing: manifest.missing, changed: manifest.changed }).toEqual({ missing: [], changed: [] });
  expect(manifest.files?.map(({ key }) => key).sort()).toEqual(Object.keys(before.files));
});

test('a database and a store that were destroyed come back, every row and every byte', async () => {
  await resetDatabase();
  destroyFiles();
  expect(Object.values(await rowsOf(config.databaseUrl)).every((row) => row.startsWith('0 '))).toBe(true);

  const restored = await restore(file);
  expect(await rowsOf(config.databaseUrl)).toEqual(before.rows);
  expect(await rulesOf(config.databaseUrl)).toEqual(before.rules);
  expect(filesOf(fileFolder)).toEqual(before.files);
  expect(restored.waitingMail).toBeGreaterThan(0);
});

test('mail that waited leaves, each message once', async () => {
  const waiting = await db.mail.findMany({ where: { state: 'queued' }, select: { messageId: true } });
  expect(waiting.length).toBeGreaterThan(0);
  await prepareQueue();
  const server = await startMailServer();
  // Starting to work puts back what no job of the queue carries.
  const mailWorker = await openWorker({ smtpUrl: server.url, pollSeconds: 0.5 });
  await vi.waitFor(async () => expect(await db.mail.count({ where: { state: 'queued' } })).toBe(0), 15_000);
  await mailWorker.stop();
  await server.stop();
  expect(server.inbox.map((each) => each.messageId).sort()).toEqual(
    waiting.map(({ messageId }) => messageId).sort(),
  );
});

test('a place that is not empty is left alone', async () => {
  const there = await rowsOf(config.databaseUrl);
  await expect(restore(file)).rejects.toThrow(/The database is not empty: table \w+ has rows/);
  expect(await rowsOf(config.databaseUrl)).toEqual(there);
});

test('a backup of an older version is brought up to this one, one of a newer version is refused', async () => {
  const { path: newest = '' } = (await readMigrations()).migrationDirectories.at(-1) ?? {};
  const earlier = (await checkBackup(file)).manifest.migrations.filter((name) => name !== newest);
  const databaseUrl = config.databaseUrl;
  const dropAll = () =>
    onServer(databaseUrl, (client) => client.query('DROP SCHEMA public CASCADE; CREATE SCHEMA public'));
  await dropAll();
  await migrate(databaseUrl, { only: earlier });
  await onServer(databaseUrl, (client) =>
    client.query(`INSERT INTO family (id, slug, name) VALUES ('f', 'old', 'Kept since long')`),
  );
  const older = path.join(folder, 'older.tar');
  await makeBackup({ file: older, databaseUrl, secret, hasSecret: true, files: null, now });
  await dropAll();
  const restored = await restoreBackup({ file: older, databaseUrl, files: null });
  expect(restored.migrated).toEqual([newest]);
  expect(await db.family.findMany({ select: { slug: true, name: true } })).toEqual([
    { slug: 'old', name: 'Kept since long' },
  ]);

  await resetDatabase();
  const checked = await checkBackup(older);
  checked.manifest.migrations.push('99990101000000_of_next_year');
  await expect(restoreBackup({ file: older, databaseUrl, files: null, checked })).rejects.toThrow(
    'its migration 99990101000000_of_next_year is not known here',
  );
});

describe('elsewhere', () => {
  const places = isOnServer() ? (['embedded', 'server'] as const) : (['embedded'] as const);

  test.each(places)(
    'an empty database that was never prepared takes it, and a move takes it on: %s',
    async (kind) => {
      const url = await anotherPlace(kind);
      const files = mkdtempSync(path.join(folder, 'files-'));
      await restore(file, url, files);
      expect(await rowsOf(url)).toEqual(before.rows);
      expect(await rulesOf(url)).toEqual(before.rules);
      expect(filesOf(files)).toEqual(before.files);

      // And out of it again, as a move takes it: two engines must write the same rows in the same way.
      await resetDatabase();
      const other = mkdtempSync(path.join(folder, 'other-'));
      const places = {
        from: await openPlace({ kind: 'folder', folder: files }),
        to: await openPlace({ kind: 'folder', folder: other }),
      };
      const draft = path.join(folder, 'move.tar');
      const move = () =>
        moveWorkshop({ from: url, to: config.databaseUrl, files: places, secret, draft, now });
      const moved = await move();
      expect(moved.files.put).toBe(Object.keys(before.files).length);
      expect(await rowsOf(config.databaseUrl)).toEqual(before.rows);
      expect(await rowsOf(url)).toEqual(before.rows);
      expect(filesOf(other)).toEqual(before.files);
      expect(filesOf(files)).toEqual(before.files);
      await expect(move()).rejects.toThrow('The database is not empty');
      expect(existsSync(draft)).toBe(false);
      await stop();
      stop = async () => {};
    },
  );
});

test('another file under the same key stops it before anything is written', async () => {
  const files = await openPlace(config.files);
  const [key = ''] = Object.keys(before.files);
  const kept = await files.read(key);
  await resetDatabase();
  await files.put(key, Buffer.from('something else'));
  await expect(restore(file)).rejects.toThrow(`The store has another file under ${key}`);
  await files.put(key, kept);
  expect(Object.values(await rowsOf(config.databaseUrl)).every((row) => row.startsWith('0 '))).toBe(true);
  const { files: counted } = await restore(file);
  expect(counted).toEqual({ put: 0, there: Object.keys(before.files).length });
});

test('a table that does not come out as it went in keeps everything out', async () => {
  await resetDatabase();
  destroyFiles();
  const checked = await checkBackup(file);
  const customers = checked.manifest.tables.find(({ name }) => name === 'customer');
  if (!customers) throw new Error('there is no table of customers');
  customers.sha256 = '0'.repeat(64);
  const files = await openPlace(config.files);
  await expect(restoreBackup({ file, databaseUrl: config.databaseUrl, files, checked })).rejects.toThrow(
    'Table customer did not come out as it went in; nothing was kept.',
  );
  expect(Object.values(await rowsOf(config.databaseUrl)).every((row) => row.startsWith('0 '))).toBe(true);
  expect(filesOf(fileFolder)).toEqual({});
  await restore(file);
  expect(await rowsOf(config.databaseUrl)).toEqual(before.rows);
});

test('the app goes on writing while a backup is made, and the backup holds one moment', async () => {
  const job = await db.job.findFirstOrThrow({ select: { id: true } });
  const during = path.join(folder, 'during.tar');
  let written = 0;
  let isMaking = true;
  const making = backup(during).finally(() => {
    isMaking = false;
  });
  while (isMaking) {
    await sendMessage({ jobId: job.id, text: `Message ${written}`, actor: BENCH, now });
    written += 1;
  }
  await making;
  expect(written).toBeGreaterThan(0);
  await resetDatabase();
  await restore(during);
  // A message, its event and its mail are one transaction: a backup has all three of them or none.
  const [messages, events] = await Promise.all([
    db.message.count({ where: { jobId: job.id } }),
    db.jobEvent.count({ where: { jobId: job.id, kind: 'message-sent' } }),
  ]);
  expect(messages).toBe(events);
  expect(messages).toBeLessThanOrEqual(written);
});

test.runIf(isOnServer())('what is written between two tables of a backup is in neither', async () => {
  const job = await db.job.findFirstOrThrow({ select: { id: true } });
  const written = await db.message.count();
  const during = path.join(folder, 'between.tar');
  await onServer(config.databaseUrl, async (client) => {
    // Tables are read by name: events of jobs, then mail, which is held here, then messages.
    await client.query('BEGIN; LOCK TABLE mail IN ACCESS EXCLUSIVE MODE');
    const making = backup(during);
    await vi.waitFor(async () => {
      const { rows } = await client.query('SELECT FROM pg_locks WHERE NOT granted');
      expect(rows).toHaveLength(1);
    }, 15_000);
    await db.message.create({ data: { jobId: job.id, author: 'staff', text: 'Too late', at: now } });
    await client.query('COMMIT');
    await making;
  });
  const { manifest } = await checkBackup(during);
  expect(manifest.tables.find(({ name }) => name === 'message')?.rows).toBe(written);
  expect(await db.message.count()).toBe(written + 1);
});

test('a backup that fails half way leaves no file', async () => {
  const never = path.join(folder, 'never.tar');
  const files = await openPlace(config.files);
  const failing = { ...files, read: () => Promise.reject(new Error('the disk is gone')) };
  await expect(
    makeBackup({
      file: never,
      databaseUrl: config.databaseUrl,
      secret,
      hasSecret: true,
      files: failing,
      now,
    }),
  ).rejects.toThrow('the disk is gone');
  expect(existsSync(never) || existsSync(`${never}.part`)).toBe(false);
});
