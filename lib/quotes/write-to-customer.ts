import { dayFromDate, dayInZone } from '@/lib/calendar/day';
import { transaction } from '@/lib/db/transaction';
import { settleAnswered } from '@/lib/jobs/write-settled';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { readWorkshop } from '@/lib/workshop/records';
import type { ToCustomer } from './ask-customer';
import { standsMeanwhile } from './rules/held-price';
import { STAFF_MAY_WRITE } from './rules/request-states';
import { writeQuoteEvent } from './write-quote-event';

/**
 * A message to the customer beside a price that was sent, mirrored by mail. It moves nothing: the price waits as before.
 * Before a price, words to the customer are a question.
 */
export async function writeToCustomer(o: ToCustomer): Promise<void> {
  await transaction(async (tx) => {
    const request = await tx.quoteRequest.findUnique({
      where: { quoteId: o.quoteId },
      select: {
        email: true,
        quote: {
          select: {
            revisions: { orderBy: { revision: 'desc' }, take: 1, select: { state: true, validUntil: true } },
          },
        },
      },
    });
    if (!request) throw new Refusal('not-found', 'There is no such request.');
    const [newest] = request.quote.revisions;
    const price = newest ? { state: newest.state, validUntil: dayFromDate(newest.validUntil) } : null;
    const today = dayInZone(o.now, (await readWorkshop(tx)).timeZone);
    const message = await tx.message.create({
      data: { quoteId: o.quoteId, author: 'staff', userId: o.actor.id, text: o.text, at: o.now },
      select: { id: true },
    });
    await writeQuoteEvent(tx, {
      quoteId: o.quoteId,
      actor: o.actor,
      now: o.now,
      event: { kind: 'written', data: { messageId: message.id } },
      expected: { version: o.version, states: STAFF_MAY_WRITE },
    });
    await settleAnswered(tx, { ...o, about: { quoteId: o.quoteId } });
    await queueMail(tx, {
      template: 'message-from-workshop',
      data: { text: o.text, ...(standsMeanwhile(price, today) && { goesOn: true }) },
      to: request.email,
      quoteId: o.quoteId,
      now: o.now,
    });
  });
}
