import { dayFromDate, dayInZone } from '@/lib/calendar/day';
import { transaction } from '@/lib/db/transaction';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { readWorkshop } from '@/lib/workshop/records';
import { requireBookings } from '@/lib/workshop/require-bookings';
import { readQuote } from './records';
import { yesAfterNo } from './rules/held-no';
import { isHeld } from './rules/held-price';
import { isInspectionOnly } from './rules/inspection-fee';
import { requestMove } from './rules/request-states';
import { readAgreedWords } from './stored-agreed-words';
import { writeQuoteEvent } from './write-quote-event';

const CUSTOMER = { kind: 'customer' } as const;

/**
 * The customer's yes or no to a quote. The answer names the revision it was given on: if the workshop has sent another
 * one meanwhile, nothing is decided and the customer sees the new price. The words agreed to are written from the
 * revision, and frozen with who and when. Answering the same way twice is not an error, since a tap on a weak signal is often sent again.
 */
export async function decideQuote(o: {
  quoteId: string;
  revision: number;
  decision: 'accepted' | 'declined';
  now: Date;
}): Promise<void> {
  await transaction(async (tx) => {
    await tx.$queryRaw`SELECT 1 FROM "quote" WHERE "id" = ${o.quoteId} FOR UPDATE`;
    const quote = await readQuote({ id: o.quoteId }, tx);
    const offer = quote?.revisions.find(({ revision }) => revision === o.revision);
    if (!quote || !offer) throw new Refusal('not-found', 'There is no such price to answer.');
    const isTakenBack = yesAfterNo(quote.events, { no: o.revision }) !== null;
    if (offer.state === o.decision && !isTakenBack) return;
    if (offer.state !== 'sent') {
      throw new Refusal('conflict', 'This price was answered or replaced already.');
    }
    const workshop = await readWorkshop(tx);
    const today = dayInZone(o.now, workshop.timeZone);
    if (o.decision === 'accepted') requireBookings(workshop);
    if (o.decision === 'accepted' && !isHeld(dayFromDate(offer.validUntil), today)) {
      throw new Refusal('conflict', 'This price is no longer held. Write to us, and we send you a new one.');
    }
    const { from, to } = requestMove(o.decision === 'accepted' ? 'accept' : 'decline');
    await writeQuoteEvent(tx, {
      quoteId: quote.id,
      actor: CUSTOMER,
      now: o.now,
      event: { kind: 'decided', data: { revision: o.revision, decision: o.decision } },
      expected: { version: quote.version, states: from },
      to,
    });
    await tx.quoteRevision.update({
      where: { id: offer.id },
      data: {
        state: o.decision,
        decidedAt: o.now,
        decidedBy: CUSTOMER.kind,
        agreedText: readAgreedWords(quote, offer, { decision: o.decision, locale: workshop.locale }),
      },
    });
    const mail = { to: quote.request.email, quoteId: quote.id, now: o.now };
    if (o.decision === 'accepted') {
      const isInspection = isInspectionOnly(offer);
      const data = { revision: o.revision, gross: offer.grossMinor, ...(isInspection && { isInspection }) };
      await queueMail(tx, { template: 'quote-accepted', data, ...mail });
    } else {
      const validUntil = dayFromDate(offer.validUntil);
      const data = { revision: o.revision, ...(isHeld(validUntil, today) && { yesUntil: validUntil }) };
      await queueMail(tx, { template: 'quote-declined', data, ...mail });
    }
  });
}
