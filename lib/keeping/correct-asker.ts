import { transaction } from '@/lib/db/transaction';
import type { ByStaff } from '@/lib/jobs/actor';
import { Refusal } from '@/lib/outcome';
import { emailKey, type RequestAnswers } from '@/lib/quotes/rules/request-answers';
import { writeNewQuoteLink } from '@/lib/quotes/write-new-quote-link';
import { writeQuoteEvent } from '@/lib/quotes/write-quote-event';
import { noteSeen } from './seen';
import { readdressMail } from './write-mail-address';

export type AskerAnswers = Pick<RequestAnswers, 'name' | 'email' | 'phone'>;

/**
 * Puts right how whoever asked for a price is called and reached (GDPR Article 16), while no job was booked at it: then the
 * job's contact is put right, and the request with it. Letters that have not left, were given up or came back go to the new
 * address from now on; where the address changes, `newLink` ends every private link and sends a new one to the right one.
 */
export async function correctAsker(
  o: ByStaff & { quoteId: string; version: number; contact: AskerAnswers; newLink: boolean },
): Promise<void> {
  await transaction(async (tx) => {
    const quote = await tx.quote.findUnique({
      where: { id: o.quoteId },
      select: { jobId: true, request: { select: { email: true } } },
    });
    if (!quote?.request) throw new Refusal('not-found', 'There is no such request.');
    if (quote.request.email === '') throw new Refusal('conflict', 'The data of this person was removed.');
    if (quote.jobId)
      throw new Refusal('conflict', 'A job was booked from this quote. Correct the contact of the job.');
    const { name, email, phone } = o.contact;
    await writeQuoteEvent(tx, {
      quoteId: o.quoteId,
      actor: o.actor,
      now: o.now,
      event: { kind: 'contact-corrected', data: {} },
      expected: { version: o.version },
    });
    await tx.quoteRequest.update({
      where: { quoteId: o.quoteId },
      data: { name, email, emailKey: emailKey(email), phone },
      select: { quoteId: true },
    });
    await readdressMail(tx, { of: { quoteId: o.quoteId }, from: [quote.request.email], to: email });
    if (o.newLink && emailKey(email) !== emailKey(quote.request.email)) {
      await writeNewQuoteLink(tx, { quoteId: o.quoteId, to: email, actor: o.actor, now: o.now });
    }
    await noteSeen({ userId: o.actor.id, what: 'corrected', email, quoteId: o.quoteId, now: o.now }, tx);
  });
}
