import { type Tx, transaction } from '@/lib/db/transaction';
import type { ByStaff } from '@/lib/jobs/actor';
import { settleAnswered } from '@/lib/jobs/write-settled';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { requestMove } from './rules/request-states';
import { writeQuoteEvent } from './write-quote-event';

export type ToCustomer = ByStaff & {
  quoteId: string;
  /** the version the writer saw */
  version: number;
  text: string;
};

/** A question before a price: it goes to the customer by mail, and the request waits for the answer. */
export async function askCustomer(o: ToCustomer): Promise<void> {
  await tellCustomer(o, 'ask-question');
}

/** Words to the customer that move the request on: a question, or why it is turned down. */
export async function tellCustomer(o: ToCustomer, key: 'ask-question' | 'turn-down'): Promise<void> {
  await transaction(async (tx) => {
    const request = await tx.quoteRequest.findUnique({
      where: { quoteId: o.quoteId },
      select: { email: true },
    });
    if (!request) throw new Refusal('not-found', 'There is no such request.');
    const message = await tx.message.create({
      data: { quoteId: o.quoteId, author: 'staff', userId: o.actor.id, text: o.text, at: o.now },
      select: { id: true },
    });
    const { from, to } = requestMove(key);
    await writeQuoteEvent(tx, {
      quoteId: o.quoteId,
      actor: o.actor,
      now: o.now,
      event: { kind: key === 'turn-down' ? 'turned-down' : 'questioned', data: { messageId: message.id } },
      expected: { version: o.version, states: from },
      to,
    });
    await settleAnswered(tx, { ...o, about: { quoteId: o.quoteId } });
    const hadPrice = key === 'turn-down' && (await endPrice(tx, o.quoteId));
    await queueMail(tx, {
      template: key === 'turn-down' ? 'quote-turned-down' : 'quote-question',
      data: { text: o.text, ...(hadPrice && { hadPrice }) },
      to: request.email,
      quoteId: o.quoteId,
      now: o.now,
    });
  });
}

/** A price that waits for its answer or for the booking stands no longer; true where one was ever sent. */
async function endPrice(tx: Tx, quoteId: string): Promise<boolean> {
  await tx.quoteRevision.updateMany({
    where: { quoteId, state: { in: ['sent', 'accepted'] } },
    data: { state: 'replaced' },
  });
  return (await tx.quoteRevision.count({ where: { quoteId } })) > 0;
}
