import type { Tx } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import { createQuoteLink } from '@/lib/jobs/private-link';
import { queueMail } from '@/lib/mail/queue';
import { writeQuoteEvent } from './write-quote-event';

/** Withdraws every private link of a quote that was asked for and mails a new one to `to`. */
export async function writeNewQuoteLink(
  tx: Tx,
  o: { quoteId: string; to: string; actor: Actor; now: Date; version?: number },
): Promise<void> {
  const { quoteId, to, actor, now, version } = o;
  const event = { kind: 'link-renewed', data: {} } as const;
  await writeQuoteEvent(tx, {
    quoteId,
    actor,
    now,
    event,
    ...(version !== undefined && { expected: { version } }),
  });
  await tx.privateLink.updateMany({ where: { quoteId, revokedAt: null }, data: { revokedAt: now } });
  await createQuoteLink(tx, quoteId, now);
  await queueMail(tx, { template: 'link-renewed', data: {}, to, quoteId, now });
}
