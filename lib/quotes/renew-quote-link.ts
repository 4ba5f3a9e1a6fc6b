import { transaction } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import { Refusal } from '@/lib/outcome';
import { writeNewQuoteLink } from './write-new-quote-link';

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
    await writeNewQuoteLink(tx, {
      quoteId: o.quoteId,
      to: request.email,
      actor: o.actor,
      now: o.now,
      version: o.version,
    });
  });
}
