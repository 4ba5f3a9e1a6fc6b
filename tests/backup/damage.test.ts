import {
  closeSync,
  copyFileSync,
  mkdtempSync,
  openSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { checkBackup } from '@/lib/backup/check-backup';
import { openPlace } from '@/lib/backup/file-place';
import { makeBackup } from '@/lib/backup/make-backup';
import { authSecret, config } from '@/lib/config';
import { db } from '@/lib/db/client';
import { putFile } from '@/lib/files/store';
import { useDatabase } from '@/tests/database';
import { makeBooking } from '@/tests/makers/job';
import { somePhoto } from '@/tests/makers/walk';
import { makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

const now = new Date('2026-11-25T10:30:00Z');
const folder = mkdtempSync(path.join(tmpdir(), 'mendpost-damage-'));
const whole = path.join(folder, 'whole.tar');
const copy = path.join(folder, 'copy.tar');
let bytes = Buffer.alloc(0);

beforeAll(async () => {
  const world = await makeWorkshop(now);
  const { jobId } = await makeBooking({ repairId: world.repairId, now });
  const photo = { ...somePhoto(), fileKey: 'photos/made-1', thumbKey: 'photos/made-1-thumb' };
  const { fileKey, thumbKey } = photo;
  await db.photo.create({ data: { ...photo, jobId, purpose: 'arrival', at: now } });
  await putFile(fileKey, Buffer.from('the bytes of a picture'), 'image/jpeg');
  const files = await openPlace(config.files);
  const made = await makeBackup({
    file: whole,
    databaseUrl: config.databaseUrl,
    secret: authSecret(),
    hasSecret: true,
    files,
    now,
  });
  // One was never kept, the other is not what its row says.
  expect(made).toMatchObject({ missing: [thumbKey], changed: [fileKey] });
  bytes = readFileSync(whole);
}, 60_000);

afterAll(() => rmSync(folder, { recursive: true }));

/** The backup with one byte changed, the last bit of it. */
async function withChanged(at: number): Promise<string> {
  copyFileSync(whole, copy);
  const file = openSync(copy, 'r+');
  writeSync(file, Buffer.from([(bytes[at] ?? 0) ^ 1]), 0, 1, at);
  closeSync(file);
  return checkBackup(copy).then(
    () => 'passed',
    (error: unknown) => (error instanceof Error ? error.message : ''),
  );
}

/** Where the content of an entry begins: behind its header of 512 bytes, which starts with its name. */
function contentOf(name: string): number {
  const at = bytes.indexOf(`${name}\0`);
  if (at < 0) throw new Error(`no entry ${name}`);
  return at + 512;
}

test('the whole file passes', async () => {
  const { manifest, secret } = await checkBackup(whole);
  expect(secret).toBe(authSecret());
  expect(manifest.missing).toHaveLength(1);
});

test.each([
  ['a row', 'tables/customer/00001.ndjson.gz', 30, 'tables/customer/00001.ndjson.gz is not as it was'],
  [
    'a stamp that no unpacking looks at',
    'tables/customer/00001.ndjson.gz',
    4,
    'tables/customer/00001.ndjson.gz is not as it was',
  ],
  ['a file', 'files/photos/made-1', 3, 'files/photos/made-1 is not as it was'],
  ['the secret', 'secret', 5, 'the entry secret is not as it was'],
  ['the manifest', 'manifest.json', 40, 'manifest.json'],
  ['the seal', 'seal.sha256', 3, 'bytes between its entries, or its seal, were changed'],
  [
    'a gap behind an entry',
    'files/photos/made-1',
    300,
    'bytes between its entries, or its seal, were changed',
  ],
  ['a header', 'files/photos/made-1', -512, 'the header of the entry after tables/'],
])('one changed byte in %s is named', async (_what, name, offset, sentence) => {
  expect(await withChanged(contentOf(name) + offset)).toContain(sentence);
});

test('no byte anywhere can change unnoticed', async () => {
  const { size } = statSync(whole);
  const passed: number[] = [];
  // Every 397th: a prime, so that each place of a block of 512 bytes is met, in headers, contents and gaps.
  for (let at = 0; at < size; at += 397) if ((await withChanged(at)) === 'passed') passed.push(at);
  expect(passed).toEqual([]);
}, 60_000);

test('a file that was cut off is not whole, wherever', async () => {
  for (const length of [0, 1, 2048, 5000, bytes.length / 2, bytes.length - 2048, bytes.length - 1]) {
    copyFileSync(whole, copy);
    truncateSync(copy, Math.floor(length));
    await expect(checkBackup(copy)).rejects.toThrow('This is not a whole backup');
  }
});

test('another file, and none, are told apart from a backup', async () => {
  writeFileSync(copy, Buffer.alloc(20_000, 'x'));
  await expect(checkBackup(copy)).rejects.toThrow('This is not a whole backup');
  await expect(checkBackup(path.join(folder, 'nowhere.tar'))).rejects.toThrow('There is no file');
});
