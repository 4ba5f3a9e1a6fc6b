import { randomUUID } from 'node:crypto';
import { config } from '@/lib/config';
import type { Prisma } from '@/lib/db/generated/client';
import type { Tx } from '@/lib/db/transaction';
import { requestIdNow } from '@/lib/log';
import { mailQueue, sender, within } from './boss';
import type { MailRequest } from './messages';
import { readContent } from './rules/content';

/**
 * Queues a message inside the caller's transaction and returns the id of its row. The row and the queue's job commit or
 * roll back together with the change that caused them; nothing leaves the house here.
 *
 * The Message-ID is made now and never again, so that a message sent twice by accident is the same message to the
 * reader's mail program (RFC 5322 section 3.6.4).
 */
export async function queueMail(tx: Tx, request: MailRequest): Promise<string> {
  const { template, data } = readContent(request);
  const mail = await tx.mail.create({
    data: {
      template,
      data,
      toAddress: request.to,
      jobId: request.jobId ?? null,
      quoteId: request.quoteId ?? null,
      messageId: `<${randomUUID()}@${mailHost()}>`,
      queuedAt: request.now,
    },
    select: { id: true },
  });
  await sendToQueue(tx, mail.id);
  return mail.id;
}

/**
 * Puts a message's row in the worker's queue. The queue's job has the row's id for its own and carries nothing else but
 * the id of the request it comes from, for the log, so a message has at most one.
 */
export async function sendToQueue(tx: Tx, mailId: string): Promise<void> {
  const connection = { db: within(tx), includeArchive: false };
  const requestId = requestIdNow();
  const job = { mailId, ...(requestId && { requestId }) };
  const queued = await sender().send(mailQueue, job, { id: mailId, ...connection });
  // pg-boss answers null, without an error, when the job is there already and when the queue is not.
  if (queued !== null || (await sender().getJobById(mailQueue, mailId, connection))) return;
  throw new Error('The mail queue was not prepared: run prepareQueue() once after the migrations');
}

/** Takes a message's old job out of the queue, in whatever state it is, and puts in a new one with all its tries. */
export async function requeue(tx: Tx, mailId: string): Promise<void> {
  await sender().deleteJob(mailQueue, mailId, { db: within(tx) });
  await sendToQueue(tx, mailId);
}

/** Messages that are to reach nobody any more: their rows go, and with them the places of those that waited. */
export async function dropMail(tx: Tx, where: Prisma.MailWhereInput): Promise<void> {
  const rows = await tx.mail.findMany({ where, select: { id: true } });
  const ids = rows.map(({ id }) => id);
  if (ids.length === 0) return;
  await tx.mail.deleteMany({ where: { id: { in: ids } } });
  await sender().deleteJob(mailQueue, ids, { db: within(tx) });
}

// The right-hand side of a Message-ID is a domain of the sender (RFC 5322 section 3.6.4).
function mailHost(): string {
  const host = /@([^\s@>]+)>?\s*$/.exec(config.mailFrom)?.[1];
  return host ?? new URL(config.appUrl).hostname;
}
