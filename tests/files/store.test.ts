import { expect, test } from 'vitest';
import { deleteFile, hasFile, putFile, readFile } from '@/lib/files/store';

test('bytes come back as they were kept, small and large', async () => {
  for (const size of [0, 1, 100, 70_000, 3_000_000]) {
    const bytes = Uint8Array.from({ length: size }, (_, at) => (at * 31) % 256);
    await putFile(`tests/size-${size}.bin`, bytes, 'application/octet-stream');
    const kept = await readFile(`tests/size-${size}.bin`);
    expect(Buffer.compare(kept, bytes)).toBe(0);
  }
});

test('a key keeps the last bytes put under it', async () => {
  await putFile('tests/twice.txt', Buffer.from('first, and longer'), 'text/plain');
  await putFile('tests/twice.txt', Buffer.from('second'), 'text/plain');
  expect(Buffer.from(await readFile('tests/twice.txt')).toString()).toBe('second');
});

test('a deleted file is gone, and deleting it again is no error', async () => {
  await putFile('tests/gone.txt', Buffer.from('x'), 'text/plain');
  await deleteFile('tests/gone.txt');
  await deleteFile('tests/gone.txt');
  expect(await hasFile('tests/gone.txt')).toBe(false);
  await expect(readFile('tests/gone.txt')).rejects.toThrow();
});

test('a key cannot climb out of the folder', async () => {
  await expect(putFile('../outside.txt', Buffer.from('x'), 'text/plain')).rejects.toThrow();
  await expect(readFile('../../etc/passwd')).rejects.toThrow();
});
