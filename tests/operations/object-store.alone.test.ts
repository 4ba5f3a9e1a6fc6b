import { afterAll, beforeAll, expect, test } from 'vitest';
import { type ObjectStore, startObjectStore } from '@/lib/commands/scale/object-store';
import { config, readConfig } from '@/lib/config';
import { deleteFile, filesIn, hasFile, keptSince, putFile, readFile } from '@/lib/files/store';

// The files are kept where config.files says at the first use; this file's process has used none before.
let store: ObjectStore;
beforeAll(async () => {
  store = await startObjectStore();
  config.files = readConfig(store.settings).files;
});
afterAll(() => store.stop());

test.each([0, 1, 70_000, 9_000_000])('%i bytes come back from the bucket as they were kept', async (size) => {
  const bytes = Uint8Array.from({ length: size }, (_, at) => (at * 31) % 256);
  await putFile(`photos/size-${size}.jpg`, bytes, 'image/jpeg');
  expect(await hasFile(`photos/size-${size}.jpg`)).toBe(true);
  expect(Buffer.compare(await readFile(`photos/size-${size}.jpg`), bytes)).toBe(0);
});

test('a key keeps the last bytes put under it', async () => {
  await putFile('papers/twice.pdf', Buffer.from('first, and longer'), 'application/pdf');
  await putFile('papers/twice.pdf', Buffer.from('second'), 'application/pdf');
  expect(Buffer.from(await readFile('papers/twice.pdf')).toString()).toBe('second');
});

test('what is not there is missing, not empty', async () => {
  expect(await hasFile('photos/never.jpg')).toBe(false);
  await expect(readFile('photos/never.jpg')).rejects.toThrow();
});

test('the store tells when a file was written, and nothing of one that is not there', async () => {
  const before = Date.now();
  await putFile('photos/dated.jpg', Buffer.from('x'), 'image/jpeg');
  // HTTP dates are whole seconds.
  expect((await keptSince('photos/dated.jpg'))?.getTime()).toBeGreaterThanOrEqual(before - 1000);
  expect(await keptSince('photos/never.jpg')).toBeNull();
});

test('a deleted file is gone, and deleting it again is no error', async () => {
  await putFile('photos/gone.jpg', Buffer.from('x'), 'image/jpeg');
  await deleteFile('photos/gone.jpg');
  await deleteFile('photos/gone.jpg');
  expect(await hasFile('photos/gone.jpg')).toBe(false);
});

// Fewer than a page of the store: s3rver makes its page marks with a cipher that Node has no more.
test('a folder tells its own files and no others', async () => {
  const keys = Array.from({ length: 40 }, (_, at) => `many/${String(at).padStart(2, '0')}.txt`);
  await Promise.all(keys.map((key) => putFile(key, Buffer.from('x'), 'text/plain')));
  await putFile('many-more/elsewhere.txt', Buffer.from('x'), 'text/plain');
  await putFile('many/below/it.txt', Buffer.from('x'), 'text/plain');
  expect((await filesIn('many')).toSorted()).toEqual(keys);
  expect(await filesIn('nothing-here')).toEqual([]);
});

test('a key cannot climb out of the bucket', async () => {
  await expect(putFile('../outside.txt', Buffer.from('x'), 'text/plain')).rejects.toThrow();
});
