import { beforeEach, expect, test } from 'vitest';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { queueMail } from '@/lib/mail/queue';
import { retryMail } from '@/lib/mail/retry';
import { attempt } from '@/lib/outcome';
import { resetDatabase, useDatabase } from '@/tests/database';
import { mailRow, makeQueuedMail, NOW, queueRows } from './booking';

useDatabase();
beforeEach(resetDatabase);

test('a booking leaves one message and one job of the queue that names it and nothing else', async () => {
  const { mail, to } = await makeQueuedMail();
  expect(mail).toMatchObject({
    template: 'job-booked',
    toAddress: to,
    state: 'queued',
    attempts: 0,
    data: {},
  });
  expect(await queueRows()).toEqual([
    { id: mail.id, state: 'created', data: { mailId: mail.id }, retry_count: 0 },
  ]);
});

test('a change that is rolled back leaves neither message nor job of the queue', async () => {
  const { jobId } = await makeQueuedMail();
  const before = await queueRows();
  const rolledBack = transaction(async (tx) => {
    await queueMail(tx, { template: 'link-renewed', data: {}, to: 'a@example.org', jobId, now: NOW });
    // The test can fail: within the transaction both are there.
    expect(await tx.mail.count()).toBe(2);
    expect(await tx.$queryRaw`select 1 from pgboss.job where name = 'mail'`).toHaveLength(2);
    throw new Error('the rest of the change failed');
  });
  await expect(rolledBack).rejects.toThrow('the rest of the change failed');
  expect(await db.mail.count()).toBe(1);
  expect(await queueRows()).toEqual(before);
});

test('a Message-ID is made at queueing, from nothing that tells about the job, in the sender’s domain', async () => {
  const { jobId, mail } = await makeQueuedMail();
  const second = await transaction((tx) =>
    queueMail(tx, { template: 'link-renewed', data: {}, to: 'a@example.org', jobId, now: NOW }),
  );
  const form = /^<[0-9a-f]{8}-[0-9a-f-]{27}@example\.org>$/;
  expect(mail.messageId).toMatch(form);
  expect((await mailRow(second)).messageId).toMatch(form);
  expect((await mailRow(second)).messageId).not.toBe(mail.messageId);
});

test('facts that a template does not know are refused, so that nothing private is kept by accident', async () => {
  const { jobId } = await makeQueuedMail();
  const facts = { revision: 1, decision: 'accepted', gross: 100, token: 'secret' } as const;
  const queued = transaction((tx) =>
    queueMail(tx, { template: 'approval-recorded', data: facts, to: 'a@example.org', jobId, now: NOW }),
  );
  await expect(queued).rejects.toThrow('token');
  expect(await db.mail.count()).toBe(1);
});

test.each(['failed', 'kept', 'queued'])('a message that is %s can be sent again by hand', async (state) => {
  const { mail } = await makeQueuedMail();
  await db.$executeRaw`update pgboss.job set state = 'failed', retry_count = 10 where name = 'mail'`;
  await db.mail.update({ where: { id: mail.id }, data: { state, attempts: 11, lastError: 'Not reached.' } });

  await retryMail(mail.id);

  expect(await mailRow(mail.id)).toMatchObject({
    state: 'queued',
    lastError: null,
    messageId: mail.messageId,
  });
  expect(await queueRows()).toEqual([
    { id: mail.id, state: 'created', data: { mailId: mail.id }, retry_count: 0 },
  ]);
});

test.each([
  ['sent', 'conflict'],
  ['sending', 'conflict'],
  ['missing', 'not-found'],
])('a message that is %s is not sent again by hand', async (state, code) => {
  const { mail } = await makeQueuedMail();
  if (state !== 'missing') await db.mail.update({ where: { id: mail.id }, data: { state } });
  const before = await queueRows();
  const outcome = await attempt(() => retryMail(state === 'missing' ? 'no-such-message' : mail.id));
  expect(outcome).toMatchObject({ ok: false, refusal: { code } });
  expect(await queueRows()).toEqual(before);
});
