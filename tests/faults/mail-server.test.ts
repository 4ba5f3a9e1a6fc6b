import { afterEach, beforeEach, expect, test } from 'vitest';
import { openPostOffice, type PostOffice } from '@/lib/commands/faults/post-office';
import { deliver, TryAgain } from '@/lib/mail/deliver';
import { resetDatabase, useDatabase } from '@/tests/database';
import { mailRow, makeQueuedMail } from '@/tests/mail/booking';

useDatabase();
beforeEach(resetDatabase);
let office: PostOffice;
afterEach(() => office.stop());

test('a connection that drops after the message was handed over: it leaves again, under the same Message-ID', async () => {
  const { mail } = await makeQueuedMail();
  office = await openPostOffice({ habit: 'drops-after-data' });
  const attempt = { mailId: mail.id, isLast: false, smtpUrl: office.url };
  await expect(deliver(attempt)).rejects.toBeInstanceOf(TryAgain);
  expect(await mailRow(mail.id)).toMatchObject({ state: 'queued', attempts: 1, sentAt: null });
  expect(office.received.get(mail.messageId)).toBe(1);

  office.habit = 'takes';
  expect(await deliver(attempt)).toBe('sent');
  expect([...office.received]).toEqual([[mail.messageId, 2]]);
});

test('an address refused for now waits, and leaves when it is taken', async () => {
  const { mail } = await makeQueuedMail();
  office = await openPostOffice({ habit: 'refuses-for-now' });
  const attempt = { mailId: mail.id, isLast: false, smtpUrl: office.url };
  await expect(deliver(attempt)).rejects.toThrow('The mail server refused the address (451 4.3.0).');
  office.habit = 'takes';
  expect(await deliver(attempt)).toBe('sent');
  expect([...office.received]).toEqual([[mail.messageId, 1]]);
});
