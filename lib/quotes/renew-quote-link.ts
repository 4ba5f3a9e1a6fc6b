import { transaction } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import { createQuoteLink } from '@/lib/jobs/private-link';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { writeQuoteEvent } from './write-quote-event';

/** Withdraws every private link of a quote and sends the customer a new one. The price waits as before. */
export async function renewQuoteLink(o: {
  quoteId: string;
  version: number;
  actor: Actor;
  now: Date;
}): Promise<void> {
  await transaction(async (tx) => {
    const request = await tx.quoteRequest.findUnique({
      where: { quoteId: o.quoteId },
      select: { email: true },
    });
    if (!request) throw new Refusal('not-found', 'There is no such request.');
    if (request.email === '') throw new Refusal('conflict', 'The data of this customer was removed.');
    await writeQuoteEvent(tx, {
      quoteId: o.quoteId,
      actor: o.actor,
      now: o.now,
      event: { kind: 'link-renewed', data: {} },
      expected: { version: o.version },
    });
    await tx.privateLink.updateMany({
      where: { quoteId: o.quoteId, revokedAt: null },
      data: { revokedAt: o.now },
    });
    await createQuoteLink(tx, o.quoteId, o.now);
    await queueMail(tx, {
      template: 'link-renewed',
      data: {},
      to: request.email,
      quoteId: o.quoteId,
      now: o.now,
    });
  });
}
