import { fork } from 'node:child_process';
import { once } from 'node:events';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { queueMail } from '@/lib/mail/queue';
import { recoverMail } from '@/lib/mail/recover';
import { retryMail } from '@/lib/mail/retry';
import { openWorker, type Worker } from '@/lib/mail/worker';
import { resetDatabase, useDatabase } from '@/tests/database';
import { mailRow, makeQueuedMail, NOW, queueRows } from './booking';
import { startMailServer } from './mail-server';

useDatabase();
beforeEach(resetDatabase);
// These tests wait for another process, for retries and for the queue's own clock, each of them seconds.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const opened: { stop(): Promise<void> }[] = [];
afterEach(async () => {
  for (const each of opened.splice(0).toReversed()) await each.stop();
});

async function open<T extends { stop(): Promise<void> }>(opening: Promise<T>): Promise<T> {
  const it = await opening;
  opened.push(it);
  return it;
}

function work(server: { url: string } | undefined): Promise<Worker> {
  return open(openWorker({ smtpUrl: server?.url, pollSeconds: 0.5, superviseSeconds: 1 }));
}

/** Retries that follow after a second; the house’s own would take hours. */
async function hurry(o: { retryLimit?: number } = {}): Promise<void> {
  await db.$executeRaw`
    update pgboss.job set retry_limit = ${o.retryLimit ?? 1000}, retry_delay = 1, retry_backoff = false`;
}

async function queueAnother(jobId: string): Promise<string> {
  return transaction((tx) =>
    queueMail(tx, { template: 'link-renewed', data: {}, to: 'a@example.org', jobId, now: NOW }),
  );
}

function until(check: () => Promise<void>): Promise<void> {
  return vi.waitFor(check, { timeout: 40_000, interval: 50 });
}

async function expectState(id: string, state: string): Promise<void> {
  expect((await mailRow(id)).state).toBe(state);
}

/** A port that nothing listens on, to be opened later. */
async function freePort(): Promise<number> {
  const server = await startMailServer();
  await server.stop();
  return server.port;
}

describe('a working worker', () => {
  test('sends what waits, each once, and finishes the jobs of the queue', async () => {
    const { mail, jobId } = await makeQueuedMail();
    const ids = [mail.id, await queueAnother(jobId), await queueAnother(jobId), await queueAnother(jobId)];
    const server = await open(startMailServer());
    await work(server);
    await until(async () => {
      for (const id of ids) await expectState(id, 'sent');
      expect((await queueRows()).map((row) => row.state)).toEqual(ids.map(() => 'completed'));
    });
    const sent = server.inbox.map((received) => received.messageId);
    expect(sent).toHaveLength(4);
    expect(new Set(sent).size).toBe(4);
  });

  test('delivers each once after the mail server was down and came back', async () => {
    const { mail, jobId } = await makeQueuedMail();
    const second = await queueAnother(jobId);
    await hurry();
    const port = await freePort();
    await work({ url: `smtp://127.0.0.1:${port}` });
    await until(async () => {
      for (const id of [mail.id, second]) {
        const row = await mailRow(id);
        expect(row.attempts).toBeGreaterThan(1);
        expect(row.lastError).toBe('The mail server was not reached.');
      }
    });
    const server = await open(startMailServer({ port }));
    await until(async () => {
      await expectState(mail.id, 'sent');
      await expectState(second, 'sent');
    });
    expect(server.inbox.map((received) => received.messageId).toSorted()).toEqual(
      [mail.messageId, (await mailRow(second)).messageId].toSorted(),
    );
  });

  test('gives up after the last try, with the reason, and a person can send it again', async () => {
    const { mail } = await makeQueuedMail();
    await hurry({ retryLimit: 2 });
    const port = await freePort();
    await work({ url: `smtp://127.0.0.1:${port}` });
    await until(() => expectState(mail.id, 'failed'));
    expect(await mailRow(mail.id)).toMatchObject({
      attempts: 3,
      lastError: 'The mail server was not reached.',
      sentAt: null,
    });

    const server = await open(startMailServer({ port }));
    await retryMail(mail.id);
    await until(() => expectState(mail.id, 'sent'));
    expect(server.inbox.map((received) => received.messageId)).toEqual([mail.messageId]);
  });

  test('keeps what it has no mail server for', async () => {
    const { mail } = await makeQueuedMail();
    await work(undefined);
    await until(() => expectState(mail.id, 'kept'));
  });

  test('finishes the message in hand when it is told to stop', async () => {
    const { mail } = await makeQueuedMail();
    const server = await open(startMailServer({ slowness: 1500 }));
    const worker = await work(server);
    await until(async () => expect(server.inbox).toHaveLength(1));
    await expectState(mail.id, 'sending');
    await worker.stop();
    await expectState(mail.id, 'sent');
    expect((await queueRows()).map((row) => row.state)).toEqual(['completed']);
  });
});

describe('a worker that died', () => {
  test('between sending and marking: the next sends again, under the same Message-ID', async () => {
    const { mail } = await makeQueuedMail();
    await hurry();
    const slow = await open(startMailServer({ slowness: 60_000 }));
    const child = fork('tests/mail/worker-process.ts', [slow.url], { execArgv: ['--import', 'tsx'] });
    const ended = once(child, 'exit');
    await until(async () => expect(slow.inbox).toHaveLength(1));
    child.kill('SIGKILL');
    await ended;
    await expectState(mail.id, 'sending');
    expect((await queueRows())[0]?.state).toBe('active');

    // The queue takes a try for dead after two minutes; they are let pass here.
    await db.$executeRaw`update pgboss.job set started_on = started_on - interval '2 minutes'`;

    const server = await open(startMailServer());
    await work(server);
    await until(() => expectState(mail.id, 'sent'));
    expect(await mailRow(mail.id)).toMatchObject({ attempts: 2, lastError: null });
    expect([...slow.inbox, ...server.inbox].map((received) => received.messageId)).toEqual([
      mail.messageId,
      mail.messageId,
    ]);
  });

  test('in its last try: the message is failed, because it may have left', async () => {
    const { mail } = await makeQueuedMail();
    await db.mail.update({
      where: { id: mail.id },
      data: { state: 'sending', attempts: 11, claimedAt: NOW },
    });
    await db.$executeRaw`update pgboss.job set state = 'failed' where name = 'mail'`;

    const soon = new Date(NOW.getTime() + 60_000);
    expect(await recoverMail(soon)).toBe(0);
    const later = new Date(NOW.getTime() + 10 * 60_000);
    expect(await recoverMail(later)).toBe(1);
    expect(await mailRow(mail.id)).toMatchObject({
      state: 'failed',
      lastError: 'The last try did not come to an end. The message may have left.',
    });
    expect(await recoverMail(later)).toBe(0);
  });

  test('with the queue lost, as after a restore: what waits is queued again', async () => {
    const { mail } = await makeQueuedMail();
    await db.$executeRaw`delete from pgboss.job`;
    expect(await recoverMail(NOW)).toBe(1);
    expect(await queueRows()).toMatchObject([{ id: mail.id, state: 'created' }]);
    expect(await recoverMail(NOW)).toBe(0);
  });
});
