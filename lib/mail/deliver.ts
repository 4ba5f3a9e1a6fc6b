import { createTransport } from 'nodemailer';
import { now } from '@/lib/clock';
import { config } from '@/lib/config';
import { db } from '@/lib/db/client';
import { drawMail } from './draw';
import { type Failure, readFailure } from './rules/failure';

export type Delivery = 'sent' | 'kept' | 'failed' | 'not-ours';

/** Thrown when a message waits for its next try; the queue's back-off decides when that is. */
export class TryAgain extends Error {}

type Attempt = { mailId: string; isLast: boolean; smtpUrl?: string | undefined };

/**
 * One try to hand a message to the mail server. Safe to run twice: the row is claimed by a write that names the number
 * of tries seen, so of two workers one gets it and the other leaves. A worker that dies between sending and marking
 * leaves the row 'sending'; the next try sends it again under the same Message-ID.
 */
export async function deliver(attempt: Attempt): Promise<Delivery> {
  const smtpUrl = 'smtpUrl' in attempt ? attempt.smtpUrl : config.smtpUrl;
  const mail = await db.mail.findUnique({ where: { id: attempt.mailId } });
  if (!mail || !isOpen(mail.state)) return 'not-ours';

  if (!smtpUrl) {
    const kept = await db.mail.updateMany({
      where: { id: mail.id, state: mail.state, attempts: mail.attempts },
      data: { state: 'kept', lastError: null },
    });
    return kept.count === 1 ? 'kept' : 'not-ours';
  }

  const tries = mail.attempts + 1;
  // Two workers hold the same row only when a try outlived its time: one of them raises the count, the other sees 0 rows.
  const claimed = await db.mail.updateMany({
    where: { id: mail.id, state: mail.state, attempts: mail.attempts },
    data: { state: 'sending', attempts: tries, claimedAt: now() },
  });
  if (claimed.count === 0) return 'not-ours';

  const failure = await send(mail, smtpUrl);
  const mine = { id: mail.id, state: 'sending', attempts: tries };
  if (!failure) {
    await db.mail.updateMany({ where: mine, data: { state: 'sent', sentAt: now(), lastError: null } });
    return 'sent';
  }
  const isOver = failure.isFinal || attempt.isLast;
  await db.mail.updateMany({
    where: mine,
    data: { state: isOver ? 'failed' : 'queued', lastError: failure.sentence },
  });
  if (isOver) return 'failed';
  throw new TryAgain(failure.sentence);
}

function isOpen(state: string): boolean {
  return state === 'queued' || state === 'sending';
}

type Row = {
  template: string;
  data: unknown;
  jobId: string | null;
  quoteId: string | null;
  toAddress: string;
  messageId: string;
  queuedAt: Date;
};

async function send(mail: Row, smtpUrl: string): Promise<Failure | null> {
  if (mail.toAddress === '')
    return { isFinal: true, sentence: 'There is no address to send it to any more.' };
  const drawn = await drawMail(mail).catch(() => null);
  // Not final: a database that was away for a moment must not cost a customer a message.
  if (!drawn) return { isFinal: false, sentence: 'The message could not be drawn from its records.' };
  // Shorter than the two minutes after which the queue takes a try for dead.
  const transport = createTransport({
    url: smtpUrl,
    connectionTimeout: 15_000,
    greetingTimeout: 15_000,
    socketTimeout: 30_000,
    disableFileAccess: true,
    disableUrlAccess: true,
  });
  try {
    await transport.sendMail({
      from: drawn.from,
      ...(drawn.replyTo && { replyTo: drawn.replyTo }),
      to: { name: '', address: mail.toAddress },
      subject: drawn.subject,
      html: drawn.html,
      text: drawn.text,
      messageId: mail.messageId,
      date: mail.queuedAt,
      // RFC 3834 section 5: written by a program, so that no other program answers it.
      headers: { 'Auto-Submitted': 'auto-generated' },
    });
    return null;
  } catch (error) {
    return readFailure(error);
  } finally {
    transport.close();
  }
}
