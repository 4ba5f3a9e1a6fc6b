import { afterEach, expect, test } from 'vitest';
import {
  forgetUploadedList,
  keepUploadedList,
  MOST_MEGABYTES,
  readUploadedList,
} from '@/lib/catalogue/uploaded-list';
import { MEGABYTE } from '@/lib/files/rules/limits';

const bytesOf = (text: string) => new TextEncoder().encode(text);

afterEach(async () => {
  await forgetUploadedList('user-one');
  await forgetUploadedList('user-two');
});

test('a file waits for the person who chose it, until it is forgotten', async () => {
  expect(await readUploadedList('user-one')).toBeNull();
  await keepUploadedList('user-one', bytesOf('\ufeffFamily;Märker'));
  expect(await readUploadedList('user-one')).toBe('Family;Märker');
  expect(await readUploadedList('user-two')).toBeNull();
  await keepUploadedList('user-one', bytesOf('another'));
  expect(await readUploadedList('user-one')).toBe('another');
  await forgetUploadedList('user-one');
  expect(await readUploadedList('user-one')).toBeNull();
});

test.each([
  ['nothing in it', bytesOf(' \r\n')],
  // "ä" in Windows-1252 is no UTF-8.
  ['another encoding', Uint8Array.from([0x46, 0xe4, 0x0a])],
  ['UTF-16, as some spreadsheets save text', Uint8Array.from([0xff, 0xfe, 0x46, 0x00])],
  ['a zero byte', bytesOf('Fam\0ily')],
  ['more bytes than a file may have', new Uint8Array(MOST_MEGABYTES * MEGABYTE + 1).fill(0x61)],
])('a file with %s is refused, and none waits', async (_, bytes) => {
  await expect(keepUploadedList('user-one', bytes)).rejects.toMatchObject({ code: 'invalid', field: 'file' });
  expect(await readUploadedList('user-one')).toBeNull();
});
