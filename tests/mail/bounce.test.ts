import { beforeEach, describe, expect, it, test } from 'vitest';
import { db } from '@/lib/db/client';
import { deliver } from '@/lib/mail/deliver';
import { markBounced } from '@/lib/mail/mark-bounced';
import { markTold } from '@/lib/mail/mark-told';
import { countMail, countMailToLookAt, troubledMail } from '@/lib/mail/records';
import { retryMail } from '@/lib/mail/retry';
import { remedyOf } from '@/lib/mail/rules/bounce';
import { resetDatabase, useDatabase } from '@/tests/database';
import { mailRow, makeQueuedMail, NOW, queueRows } from './booking';

useDatabase();
beforeEach(resetDatabase);

async function sent() {
  const made = await makeQueuedMail();
  await db.mail.update({ where: { id: made.mail.id }, data: { state: 'sent', sentAt: NOW, attempts: 1 } });
  return made;
}

describe('a message that came back', () => {
  test('is marked with what the other server said, once, and counted', async () => {
    const { mail, jobId } = await sent();
    await markBounced({ mailId: mail.id, note: '550 5.1.1 no such user', now: NOW });
    await markBounced({ mailId: mail.id, note: 'again', now: new Date(NOW.getTime() + 1000) });
    expect(await mailRow(mail.id)).toMatchObject({ bouncedAt: NOW, bounceNote: '550 5.1.1 no such user' });
    expect((await countMail()).bounced).toBe(1);
    expect(await countMailToLookAt()).toEqual({ failed: 0, kept: 0, bounced: 1 });
    expect(await troubledMail({ jobId })).toMatchObject([
      { id: mail.id, template: 'job-booked', trouble: '550 5.1.1 no such user' },
    ]);
  });

  test('can be sent again, as the same message, and is no longer counted', async () => {
    const { mail } = await sent();
    await expect(retryMail(mail.id)).rejects.toMatchObject({ code: 'conflict' });
    await markBounced({ mailId: mail.id, note: '552 5.2.2 over quota', now: NOW });
    await retryMail(mail.id);
    expect(await mailRow(mail.id)).toMatchObject({
      state: 'queued',
      bouncedAt: null,
      bounceNote: '',
      messageId: mail.messageId,
    });
    expect((await countMail()).bounced).toBe(0);
    expect((await countMailToLookAt()).bounced).toBe(0);
    expect(await queueRows()).toHaveLength(1);
  });

  test('is not one that never left', async () => {
    const { mail } = await makeQueuedMail();
    await expect(markBounced({ mailId: mail.id, note: '550', now: NOW })).rejects.toMatchObject({
      code: 'conflict',
    });
    await expect(markBounced({ mailId: 'none', note: '550', now: NOW })).rejects.toMatchObject({
      code: 'not-found',
    });
  });
});

describe('a message whose reader was told some other way', () => {
  const told = (mailId: string) =>
    markTold({ mailId, note: 'By telephone.', actor: { id: 'desk' }, now: NOW });

  test('needs no hand any more, until it is sent again', async () => {
    const { mail, jobId } = await sent();
    await expect(told(mail.id)).rejects.toMatchObject({ code: 'conflict' });
    await markBounced({ mailId: mail.id, note: '550 5.1.1 no such user', now: NOW });
    await told(mail.id);
    await told(mail.id);
    expect(await mailRow(mail.id)).toMatchObject({
      toldAt: NOW,
      toldById: 'desk',
      toldNote: 'By telephone.',
    });
    expect(await troubledMail({ jobId })).toEqual([]);
    expect(await countMailToLookAt()).toEqual({ failed: 0, kept: 0, bounced: 0 });
    await retryMail(mail.id);
    expect(await mailRow(mail.id)).toMatchObject({ state: 'queued', toldAt: null, toldNote: '' });
  });

  test('is warned about where the job has moved on', async () => {
    const { mail, jobId } = await sent();
    await markBounced({ mailId: mail.id, note: '550', now: NOW });
    expect(await troubledMail({ jobId })).toMatchObject([{ movedTo: null }]);
    await db.mail.update({
      where: { id: mail.id },
      data: { queuedAt: new Date(NOW.getTime() - 86_400_000) },
    });
    expect(await troubledMail({ jobId })).toMatchObject([{ movedTo: 'Booked', to: 'customer' }]);
  });
});

test('a message to the workshop is not one that the customer lacks', async () => {
  const { mail, jobId } = await sent();
  await db.mail.update({
    where: { id: mail.id },
    data: { state: 'failed', template: 'message-from-customer' },
  });
  expect(await troubledMail({ jobId })).toMatchObject([{ to: 'workshop' }]);
});

test('a message to an address that was removed is given up at once', async () => {
  const { mail } = await makeQueuedMail();
  await db.mail.update({ where: { id: mail.id }, data: { toAddress: '' } });
  expect(await deliver({ mailId: mail.id, isLast: false, smtpUrl: 'smtp://127.0.0.1:9' })).toBe('failed');
  expect((await mailRow(mail.id)).lastError).toBe('There is no address to send it to any more.');
});

describe('what to do about it', () => {
  // Status codes as registered: RFC 3463 section 3, RFC 5321 section 4.2.3.
  it.each([
    ['550 5.1.1 <a@example.org> no such user', 'correct-address'],
    ['5.1.2 bad destination system address', 'correct-address'],
    ['552 5.2.2 mailbox full', 'send-later'],
    ['5.2.1 mailbox disabled', 'call'],
    ['4.4.1 no answer from host', 'send-later'],
    ['554 5.7.1 delivery not authorised', 'call'],
    ['550 mailbox unavailable', 'correct-address'],
    ['452 insufficient system storage', 'send-later'],
    ['it came back', 'look'],
    // Our own sentences: the codes are those of our own server, not of the reader's.
    ['The mail server refused the sign-in (535 5.7.8).', 'look-at-settings'],
    ['The mail server refused the sender or the address (553).', 'look-at-settings'],
    ['The mail server was not reached.', 'look-at-settings'],
    ['No secure connection to the mail server.', 'look-at-settings'],
    ['The message could not be handed to the mail server (421).', 'look-at-settings'],
    ['The mail server refused the address (550 5.1.1).', 'correct-address'],
    ['The mail server refused the message (554 5.7.1).', 'call'],
  ])('%s', (words, remedy) => {
    expect(remedyOf(words)).toBe(remedy);
  });
});
