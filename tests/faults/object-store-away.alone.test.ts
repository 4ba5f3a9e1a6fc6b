import { createHash } from 'node:crypto';
import sharp from 'sharp';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { findHalfStates } from '@/lib/commands/faults/half-states';
import { type ObjectStore, startObjectStore } from '@/lib/commands/scale/object-store';
import { config, readConfig } from '@/lib/config';
import { db } from '@/lib/db/client';
import { onServer } from '@/lib/db/server';
import { storePhoto } from '@/lib/files/photos';
import { filesIn, readFile } from '@/lib/files/store';
import { invoiceFile } from '@/lib/invoices/invoice-file';
import { readWholeInvoice } from '@/lib/invoices/records';
import { useDatabase } from '@/tests/database';
import { readyJob, sendBack } from '@/tests/makers/course';
import { makeWorkshop } from '@/tests/makers/workshop';
import { openLine } from './store-connection';

useDatabase();
// Documents are drawn here, on machines that may be busy.
vi.setConfig({ testTimeout: 60_000 });
const NOW = new Date('2026-11-29T10:00:00Z');
let store: ObjectStore;
let line: Awaited<ReturnType<typeof openLine>>;
let jobId = '';
beforeAll(async () => {
  store = await startObjectStore();
  line = await openLine(Number(new URL(store.settings['S3_ENDPOINT'] ?? '').port));
  // The files are kept where config.files says at the first use; this file's process has used none before.
  config.files = readConfig({ ...store.settings, S3_ENDPOINT: `http://127.0.0.1:${line.port}` }).files;
  jobId = await readyJob(await makeWorkshop(NOW), NOW);
}, 60_000);
afterAll(async () => {
  line.stop();
  await store.stop();
});

async function picture(): Promise<Uint8Array> {
  // Noise, so that its JPEG is larger than what passes before the line is cut.
  return sharp({
    create: {
      width: 300,
      height: 200,
      channels: 3,
      background: 'teal',
      noise: { type: 'gaussian', sigma: 60 },
    },
  })
    .jpeg()
    .toBuffer();
}

function halfStates() {
  return onServer(process.env['DATABASE_URL'] ?? '', (client) => findHalfStates((sql) => client.query(sql)));
}

async function invoicePaper(): Promise<Uint8Array> {
  const { number } = await db.invoice.findFirstOrThrow({ where: { jobId }, select: { number: true } });
  const whole = await readWholeInvoice(number);
  if (!whole) throw new Error('the invoice is gone');
  return invoiceFile(whole);
}

test.for([
  ['away', 'refused'],
  ['cut off amid an upload', 'cut'],
  ['heard, and its answers lost', 'answer-lost'],
] as const)(
  'with the store %s, papers and photos are refused in words and nothing is half done',
  async ([, weather]) => {
    line.weather = weather;
    const refusal = { code: 'unavailable', message: expect.stringContaining('its store does not answer') };
    await expect(sendBack(jobId, NOW)).rejects.toMatchObject(refusal);
    await expect(invoicePaper()).rejects.toMatchObject(refusal);
    expect(await storePhoto(await picture())).toEqual({ ok: false, reason: 'not-kept' });
    line.weather = 'fine';

    const job = await db.job.findUniqueOrThrow({
      where: { id: jobId },
      include: { certificates: true, invoices: true, mails: { where: { template: 'unit-sent-back' } } },
    });
    expect(job).toMatchObject({ stage: 'ready', certificates: [], mails: [] });
    expect(job.invoices.map(({ fileKey }) => fileKey)).toEqual([null]);
    expect(await halfStates()).toEqual([]);
  },
);

test('when it answers again everything goes through, once, with the files that the rows name', async () => {
  await sendBack(jobId, NOW);
  const paper = await invoicePaper();
  expect((await storePhoto(await picture())).ok).toBe(true);

  const { fileKey, sha256 } = await db.certificate.findFirstOrThrow({ where: { jobId } });
  expect(sumOf(await readFile(fileKey))).toBe(sha256);
  const invoice = await db.invoice.findFirstOrThrow({ where: { jobId } });
  expect(sumOf(paper)).toBe(invoice.sha256);
  // An upload that was cut leaves no file: the store keeps what came whole.
  for (const key of await filesIn('certificates'))
    expect((await readFile(key)).length).toBeGreaterThan(10_000);
  expect(await halfStates()).toEqual([]);
});

function sumOf(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}
