import { existsSync, rmSync, utimesSync } from 'node:fs';
import path from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { db } from '@/lib/db/client';
import { storePhoto } from '@/lib/files/photos';
import { hasFile, keptSince, putFile } from '@/lib/files/store';
import { invoiceFile } from '@/lib/invoices/invoice-file';
import { readWholeInvoice } from '@/lib/invoices/records';
import { forgetLeftFiles, forgetLeftFilesDaily } from '@/lib/keeping/write-left-files';
import { useDatabase } from '@/tests/database';
import { issuedCertificate } from '@/tests/makers/course';
import { makeRequest } from '@/tests/makers/quote';
import { makeWorkshop } from '@/tests/makers/workshop';
import { workerFolder } from '@/tests/world/settings';

useDatabase();
const NOW = new Date('2026-11-29T10:00:00Z');
const before = (days: number) => new Date(NOW.getTime() - days * 86_400_000);
const files = path.join(workerFolder, 'files');
afterAll(() => rmSync(files, { recursive: true, force: true }));

/** Sets when the store says that a file was written. */
function written(key: string, at: Date): string {
  utimesSync(path.join(files, key), at, at);
  return key;
}

async function photo() {
  const bytes = await sharp({ create: { width: 40, height: 30, channels: 3, background: 'teal' } })
    .jpeg()
    .toBuffer();
  const stored = await storePhoto(new Uint8Array(bytes));
  if (!stored.ok) throw new Error('a photo was not stored');
  return stored;
}

let named: string[] = [];
beforeAll(async () => {
  const world = await makeWorkshop(NOW);
  await issuedCertificate(world, NOW);
  const { number } = await db.invoice.findFirstOrThrow({ select: { number: true } });
  const whole = await readWholeInvoice(number);
  if (!whole) throw new Error('the invoice is gone');
  await invoiceFile(whole);
  const taken = await photo();
  await makeRequest({ now: NOW, photos: [taken] });
  const certificate = await db.certificate.findFirstOrThrow({ select: { fileKey: true } });
  const invoice = await db.invoice.findFirstOrThrow({ select: { fileKey: true } });
  named = [certificate.fileKey, invoice.fileKey ?? '', taken.fileKey, taken.thumbKey];
  for (const key of named) written(key, before(400));
}, 60_000);

test('files a week old that no row names go, younger ones and all that a row names stay', async () => {
  const left = await photo();
  const old = [left.fileKey, left.thumbKey, 'certificates/left-1-00.pdf', 'invoices/left-00.pdf'];
  const young = ['certificates/under-way-1-00.pdf', 'invoices/under-way-00.pdf'];
  for (const key of [...old.slice(2), ...young]) await putFile(key, Buffer.from('%PDF'), 'application/pdf');
  for (const key of old) written(key, before(7));
  for (const key of young) written(key, before(6.9));

  expect(await forgetLeftFiles(NOW)).toBe(4);
  for (const key of old) expect(await hasFile(key)).toBe(false);
  for (const key of [...young, ...named]) expect(existsSync(path.join(files, key))).toBe(true);
  expect(await forgetLeftFiles(NOW)).toBe(0);
});

test('they are looked for once a day', async () => {
  const again = async (hours: number) => {
    await putFile('certificates/daily.pdf', Buffer.from('%PDF'), 'application/pdf');
    written('certificates/daily.pdf', before(30));
    return forgetLeftFilesDaily(new Date(NOW.getTime() + hours * 3_600_000));
  };
  expect(await again(0)).toBe(1);
  expect(await again(22)).toBe(0);
  expect(await again(24)).toBeGreaterThanOrEqual(1);
});

test('the age of a file that is not there is none', async () => {
  expect(await keptSince('certificates/never.pdf')).toBeNull();
});
