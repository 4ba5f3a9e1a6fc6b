import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openPlace } from '@/lib/backup/file-place';
import { moveWorkshop } from '@/lib/backup/move-workshop';
import { authSecret, config } from '@/lib/config';
import { db } from '@/lib/db/client';
import { startEmbedded } from '@/lib/db/embedded';
import { resetDatabase, useDatabase } from '@/tests/database';
import { destroyFiles, fileFolder, filesOf, fillWorkshop, rowsOf } from './filled';

useDatabase();

const now = new Date('2026-11-25T10:30:00Z');
const folder = mkdtempSync(path.join(tmpdir(), 'mendpost-move-'));
const draft = path.join(folder, 'move.tar');
const other = path.join(folder, 'other-files');
let old = { url: '', stop: async () => {} };
let rows: Record<string, string>;
let files: Record<string, string>;

// Through the tests' database into an embedded one of its own, and back: on a server the way back is the move that people make.
beforeAll(async () => {
  destroyFiles();
  await fillWorkshop(now);
  rows = await rowsOf(config.databaseUrl);
  files = filesOf(fileFolder);
  old = await startEmbedded(path.join(folder, 'old'));
  await move(config.databaseUrl, old.url);
  await resetDatabase();
}, 60_000);

afterAll(async () => {
  await old.stop();
  rmSync(folder, { recursive: true });
});

async function move(from: string, to: string, isCopied = false) {
  const places = isCopied
    ? {
        from: await openPlace({ kind: 'folder', folder: fileFolder }),
        to: await openPlace({ kind: 'folder', folder: other }),
      }
    : null;
  return moveWorkshop({ from, to, files: places, secret: authSecret(), draft, now });
}

test('every row arrives, files are copied and what was left behind is as it was', async () => {
  const moved = await move(old.url, config.databaseUrl, true);
  expect(moved.files.put).toBe(Object.keys(files).length);
  expect(await rowsOf(config.databaseUrl)).toEqual(rows);
  expect(await rowsOf(old.url)).toEqual(rows);
  expect(filesOf(other)).toEqual(files);
  expect(filesOf(fileFolder)).toEqual(files);
  expect(existsSync(draft)).toBe(false);
});

test('a database that somebody uses is left alone', async () => {
  await db.workshop.update({ where: { id: 1 }, data: { tagline: 'Another workshop' } });
  await expect(move(old.url, config.databaseUrl)).rejects.toThrow('The database is not empty');
  expect((await db.workshop.findUniqueOrThrow({ where: { id: 1 } })).tagline).toBe('Another workshop');
  expect(existsSync(draft)).toBe(false);
});
