import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import sharp from 'sharp';
import { afterAll, afterEach, beforeAll, expect, test, vi } from 'vitest';
import { findHalfStates } from '@/lib/commands/faults/half-states';
import { db } from '@/lib/db/client';
import { onServer } from '@/lib/db/server';
import { storePhoto } from '@/lib/files/photos';
import { useDatabase } from '@/tests/database';
import { issuedCertificate, readyJob, sendBack } from '@/tests/makers/course';
import { makeWorkshop } from '@/tests/makers/workshop';
import { workerFolder } from '@/tests/world/settings';

const answer = vi.hoisted(() => ({ isLost: false }));
vi.mock('@/lib/db/transaction', async (load) => {
  const real = await load<typeof import('@/lib/db/transaction')>();
  const transaction: typeof real.transaction = async (fn, options) => {
    const value = await real.transaction(fn, options);
    if (answer.isLost) throw new Error('Connection terminated unexpectedly');
    return value;
  };
  return { ...real, transaction };
});

useDatabase();
// Documents are drawn here, on machines that may be busy.
vi.setConfig({ testTimeout: 60_000 });
const NOW = new Date('2026-11-25T10:00:00Z');
const files = path.join(workerFolder, 'files');
let world: Awaited<ReturnType<typeof makeWorkshop>>;
beforeAll(async () => {
  world = await makeWorkshop(NOW);
  // The signing key and the folders of the store are there, as after the first certificate.
  await issuedCertificate(world, NOW);
}, 60_000);

const undo: (() => void)[] = [];
afterEach(() => {
  answer.isLost = false;
  for (const each of undo.splice(0).toReversed()) each();
});
afterAll(() => rmSync(files, { recursive: true, force: true }));

function halfStates() {
  return onServer(process.env['DATABASE_URL'] ?? '', (client) => findHalfStates((sql) => client.query(sql)));
}

async function expectNothingSent(jobId: string): Promise<void> {
  const job = await db.job.findUniqueOrThrow({
    where: { id: jobId },
    include: { certificates: true, mails: { where: { template: 'unit-sent-back' } } },
  });
  expect(job).toMatchObject({ stage: 'ready', carrier: '', certificates: [], mails: [] });
  expect(await halfStates()).toEqual([]);
}

async function expectFileOfJob(jobId: string): Promise<void> {
  const { fileKey, sha256 } = await db.certificate.findFirstOrThrow({ where: { jobId } });
  const bytes = readFileSync(path.join(files, fileKey));
  expect(createHash('sha256').update(bytes).digest('hex')).toBe(sha256);
}

function picture(): Promise<Buffer> {
  return sharp({ create: { width: 60, height: 40, channels: 3, background: 'teal' } })
    .jpeg()
    .toBuffer();
}

/** A disk of its own under the store, full to the last block; false where this user may not mount one. */
function fillDisk(): boolean {
  const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=64k', 'tmpfs', files]).status === 0;
  if (!mounted) return false;
  undo.push(() => void spawnSync('umount', [files]));
  const filler = path.join(files, 'filler');
  for (let size = 128; size > 0; size -= 4) {
    try {
      writeFileSync(filler, Buffer.alloc(size * 1024));
      break;
    } catch {
      rmSync(filler, { force: true });
    }
  }
  return true;
}

test('on a full disk a dispatch says so and sends nothing back, and goes through when there is room', async (context) => {
  const jobId = await readyJob(world, NOW);
  if (!fillDisk()) return context.skip('only root may mount a small disk');
  await expect(sendBack(jobId, NOW)).rejects.toMatchObject({
    code: 'unavailable',
    message: expect.stringContaining('There is no room left'),
  });
  await expectNothingSent(jobId);
  expect(await storePhoto(await picture())).toEqual({ ok: false, reason: 'not-kept' });
  expect(
    readdirSync(files, { recursive: true, withFileTypes: true }).filter((each) => each.isFile()),
  ).toHaveLength(1);

  for (const each of undo.splice(0)) each();
  await sendBack(jobId, NOW);
  await expectFileOfJob(jobId);
  expect((await storePhoto(await picture())).ok).toBe(true);
});

test('with the store away a dispatch says so and sends nothing back, and goes through when it is there again', async () => {
  const jobId = await readyJob(world, NOW);
  renameSync(files, `${files}-away`);
  writeFileSync(files, 'no folder');
  undo.push(() => {
    rmSync(files, { recursive: true });
    renameSync(`${files}-away`, files);
  });
  await expect(sendBack(jobId, NOW)).rejects.toMatchObject({
    code: 'unavailable',
    message: expect.stringContaining('its store does not answer'),
  });
  await expectNothingSent(jobId);

  for (const each of undo.splice(0)) each();
  await sendBack(jobId, NOW);
  await expectFileOfJob(jobId);
});

test('a certificate whose commit was never answered keeps its file', async () => {
  const jobId = await readyJob(world, NOW);
  mkdirSync(files, { recursive: true });
  answer.isLost = true;
  await expect(sendBack(jobId, NOW)).rejects.toThrow('Connection terminated');
  answer.isLost = false;
  await expectFileOfJob(jobId);
  expect(await halfStates()).toEqual([]);
});

test('a dispatch that lost against another leaves no file behind', async () => {
  const jobId = await readyJob(world, NOW);
  const before = existsSync(path.join(files, 'certificates'))
    ? readdirSync(path.join(files, 'certificates')).length
    : 0;
  const both = await Promise.allSettled([sendBack(jobId, NOW), sendBack(jobId, NOW)]);
  expect(both.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
  expect(readdirSync(path.join(files, 'certificates'))).toHaveLength(before + 1);
});
