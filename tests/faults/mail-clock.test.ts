import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { openPostOffice, type PostOffice } from '@/lib/commands/faults/post-office';
import { config } from '@/lib/config';
import { db } from '@/lib/db/client';
import { recoverMail } from '@/lib/mail/recover';
import { openWorker, type Worker } from '@/lib/mail/worker';
import { resetDatabase, useDatabase } from '@/tests/database';
import { mailRow, makeQueuedMail } from '@/tests/mail/booking';
import { workerFolder } from '@/tests/world/settings';

useDatabase();
// They wait for the queue's own pace, on machines that may be busy.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });
const clock = path.join(workerFolder, 'mail-clock');
let office: PostOffice | undefined;
let worker: Worker | undefined;

beforeEach(async () => {
  await resetDatabase();
  setClock('2026-11-29T10:00:00Z');
  config.clockFile = clock;
});
afterEach(async () => {
  await worker?.stop();
  await office?.stop();
  worker = undefined;
  office = undefined;
  config.clockFile = undefined;
});

function setClock(iso: string): void {
  writeFileSync(clock, iso);
}

async function triedAgainAfter(id: string, attempts: number): Promise<void> {
  await vi.waitFor(async () => expect((await mailRow(id)).attempts).toBeGreaterThan(attempts), {
    timeout: 40_000,
    interval: 50,
  });
}

test('a message that waits is tried again while the clock jumps two days ahead and back, and leaves once', async () => {
  const { mail } = await makeQueuedMail();
  // Tries follow after a second; the house's own would take hours.
  await db.$executeRaw`update pgboss.job set retry_limit = 1000, retry_delay = 1, retry_backoff = false`;
  office = await openPostOffice({ habit: 'refuses-for-now' });
  worker = await openWorker({
    smtpUrl: office.url,
    pollSeconds: 0.5,
    superviseSeconds: 1,
    recoverSeconds: 0.5,
  });
  await triedAgainAfter(mail.id, 0);
  for (const at of ['2026-12-01T10:00:00Z', '2026-11-27T10:00:00Z']) {
    setClock(at);
    await triedAgainAfter(mail.id, (await mailRow(mail.id)).attempts);
    expect((await mailRow(mail.id)).lastError).toContain('451 4.3.0');
  }
  office.habit = 'takes';
  await vi.waitFor(async () => expect((await mailRow(mail.id)).state).toBe('sent'), {
    timeout: 40_000,
    interval: 50,
  });
  expect([...office.received]).toEqual([[mail.messageId, 1]]);
});

test('a last try that died by a clock that was ahead is told, and not kept waiting until that day', async () => {
  const { mail } = await makeQueuedMail();
  await db.mail.update({
    where: { id: mail.id },
    data: { state: 'sending', attempts: 11, claimedAt: new Date('2026-12-01T10:00:00Z') },
  });
  await db.$executeRaw`update pgboss.job set state = 'failed' where id::text = ${mail.id}`;
  expect(await recoverMail(new Date('2026-11-29T10:00:00Z'))).toBe(1);
  expect(await mailRow(mail.id)).toMatchObject({
    state: 'failed',
    lastError: 'The last try did not come to an end. The message may have left.',
  });
});
