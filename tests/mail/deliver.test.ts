import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { config } from '@/lib/config';
import { db } from '@/lib/db/client';
import { findJobByToken } from '@/lib/jobs/private-link';
import { deliver, TryAgain } from '@/lib/mail/deliver';
import { showNumber } from '@/lib/numbers/job-number';
import { resetDatabase, useDatabase } from '@/tests/database';
import { mailRow, makeQueuedMail, NOW } from './booking';
import { type MailServer, startMailServer } from './mail-server';

useDatabase();
let server: MailServer;
beforeEach(async () => {
  await resetDatabase();
  server = await startMailServer();
});
afterEach(() => server.stop());

describe('a message that leaves', () => {
  test('carries the headers, the two bodies and the address of its job', async () => {
    const { mail, number, jobId, to } = await makeQueuedMail();
    expect(await deliver({ mailId: mail.id, isLast: false, smtpUrl: server.url })).toBe('sent');

    const [received] = server.inbox;
    if (!received) throw new Error('nothing was received');
    expect(received.messageId).toBe(mail.messageId);
    expect(received.date).toEqual(NOW);
    expect(received.from?.value).toEqual([{ name: 'Quay & Alder', address: 'workshop@example.org' }]);
    expect(received.replyTo?.value).toEqual([{ name: '', address: 'bench@quayandalder.example.org' }]);
    expect(received.to).toMatchObject({ value: [{ address: to }] });
    // RFC 3834 section 5: mail that a program writes of its own accord. It is no list mail, so RFC 2369 headers stay out.
    expect(received.headers.get('auto-submitted')).toBe('auto-generated');
    expect([...received.headers.keys()].filter((name) => name.startsWith('list'))).toEqual([]);
    expect(received.headers.get('content-type')).toMatchObject({ value: 'multipart/alternative' });
    expect(received.attachments).toEqual([]);

    expect(received.subject).toBe(`Job ${showNumber(number)} is booked: Tideline HW-2`);
    const link = new RegExp(`${config.appUrl}/job/([A-Za-z0-9_-]{43})`);
    const inHtml = link.exec(String(received.html))?.[1] ?? '';
    const inText = link.exec(received.text ?? '')?.[1] ?? '';
    expect(inText).toBe(inHtml);
    expect(await findJobByToken(inText)).toMatchObject({ jobId });
    expect(received.text).toContain(showNumber(number));
    expect(received.text).toContain('£72.00');
  });

  test('is marked sent and is not sent again', async () => {
    const { mail } = await makeQueuedMail();
    await deliver({ mailId: mail.id, isLast: false, smtpUrl: server.url });
    expect(await mailRow(mail.id)).toMatchObject({ state: 'sent', attempts: 1, lastError: null });
    expect((await mailRow(mail.id)).sentAt).not.toBeNull();
    expect(await deliver({ mailId: mail.id, isLast: false, smtpUrl: server.url })).toBe('not-ours');
    expect(server.inbox).toHaveLength(1);
  });

  test('leaves once when two workers hold it at the same moment', async () => {
    const { mail } = await makeQueuedMail();
    const tries = await Promise.all(
      [1, 2, 3].map(() => deliver({ mailId: mail.id, isLast: false, smtpUrl: server.url })),
    );
    expect(tries.toSorted()).toEqual(['not-ours', 'not-ours', 'sent']);
    expect(server.inbox).toHaveLength(1);
  });

  test('carries the newest private link, not one that was withdrawn after queueing', async () => {
    const { mail, jobId, token } = await makeQueuedMail();
    await db.privateLink.updateMany({ where: { jobId }, data: { revokedAt: NOW } });
    await deliver({ mailId: mail.id, isLast: false, smtpUrl: server.url });
    expect(server.inbox[0]?.text).not.toContain(token);
    expect(server.inbox[0]?.text).not.toContain('/job/');
    expect(server.inbox[0]?.text).toContain('The link to this job no longer works. Ask us for a new one.');
  });
});

test('without a mail server a message is kept, and says so', async () => {
  const { mail } = await makeQueuedMail();
  expect(await deliver({ mailId: mail.id, isLast: false, smtpUrl: undefined })).toBe('kept');
  expect(await mailRow(mail.id)).toMatchObject({ state: 'kept', attempts: 0 });
});

describe('a message that cannot leave', () => {
  test('waits for its next try when the mail server is down, and fails at the last one', async () => {
    const { mail, to } = await makeQueuedMail();
    await server.stop();
    const once = deliver({ mailId: mail.id, isLast: false, smtpUrl: server.url });
    await expect(once).rejects.toBeInstanceOf(TryAgain);
    expect(await mailRow(mail.id)).toMatchObject({ state: 'queued', attempts: 1 });

    expect(await deliver({ mailId: mail.id, isLast: true, smtpUrl: server.url })).toBe('failed');
    const row = await mailRow(mail.id);
    expect(row).toMatchObject({
      state: 'failed',
      attempts: 2,
      lastError: 'The mail server was not reached.',
      sentAt: null,
    });
    expect(row.lastError).not.toContain(to);
    server = await startMailServer();
  });

  test.each([
    [550, 'failed', 'The mail server refused the address (550).'],
    [450, 'queued', 'The mail server refused the address (450).'],
  ])('after a %i for the address it is %s, and the reason names no address', async (code, state, reason) => {
    const { mail, to } = await makeQueuedMail();
    await server.stop();
    server = await startMailServer({
      onRcptTo: (address, _session, answer) =>
        answer(Object.assign(new Error(`no mailbox ${address.address}`), { responseCode: code })),
    });
    const once = deliver({ mailId: mail.id, isLast: false, smtpUrl: server.url });
    await (state === 'failed' ? expect(once).resolves.toBe('failed') : expect(once).rejects.toThrow(reason));
    const row = await mailRow(mail.id);
    expect(row).toMatchObject({ state, attempts: 1, lastError: reason });
    expect(row.lastError).not.toContain(to);
  });

  test('that cannot be drawn waits for its next try, in case the database was away, and fails at the last', async () => {
    const { mail } = await makeQueuedMail();
    await db.mail.update({
      where: { id: mail.id },
      data: { template: 'unit-arrived', data: { promisedOn: 'soon' } },
    });
    const once = deliver({ mailId: mail.id, isLast: false, smtpUrl: server.url });
    await expect(once).rejects.toThrow('The message could not be drawn from its records.');
    expect((await mailRow(mail.id)).state).toBe('queued');
    expect(await deliver({ mailId: mail.id, isLast: true, smtpUrl: server.url })).toBe('failed');
    expect(server.inbox).toEqual([]);
  });
});
