import { spawn } from 'node:child_process';
import { mkdtempSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { takeLock } from '@/lib/db/lock';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'mendpost-lock-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

test('a second taker learns who has the folder', async () => {
  const first = await takeLock(folder, 'http://127.0.0.1:3000');
  const second = await takeLock(folder, 'http://127.0.0.1:3100');
  expect(first.taken).toBe(true);
  expect(second).toEqual({
    taken: false,
    holder: { folder: realpathSync(folder), pid: process.pid, url: 'http://127.0.0.1:3000' },
  });
  if (first.taken) await first.release();
});

test('a released folder can be taken again, and other folders are free all along', async () => {
  const first = await takeLock(folder, '');
  const other = await takeLock(path.join(folder, 'other'), '');
  if (first.taken) await first.release();
  const again = await takeLock(folder, '');
  expect([first.taken, other.taken, again.taken]).toEqual([true, true, true]);
  for (const lock of [other, again]) if (lock.taken) await lock.release();
});

test('the same folder under another name is the same lock', async () => {
  const first = await takeLock(folder, '');
  expect((await takeLock(path.join(folder, '..', path.basename(folder)), '')).taken).toBe(false);
  if (first.taken) await first.release();
});

test('a holder that is killed leaves the folder free at once', async () => {
  const holder = spawn(process.execPath, ['--import', 'tsx', 'tests/platform/hold-lock.ts', folder]);
  await new Promise((resolve) => holder.stdout.once('data', resolve));
  expect((await takeLock(folder, '')).taken).toBe(false);
  holder.kill('SIGKILL');
  await new Promise((resolve) => holder.once('exit', resolve));
  const lock = await takeLock(folder, '');
  expect(lock.taken).toBe(true);
  if (lock.taken) await lock.release();
});
