import type { Tx } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import type { AnsweredBy } from './actor';
import type { SettledBy } from './rules/settled';

export type About = { jobId: string } | { quoteId: string };

/**
 * The answer to what a customer wrote on a job or a quote, inside the transaction that gives it: up to the message that whoever
 * answers saw last, nothing where they saw none ('' or one of another job), and everything where it is left out.
 */
export async function settleAnswered(
  tx: Tx,
  o: { about: About; actor: { id: string }; now: Date; seen?: string | undefined },
): Promise<void> {
  const theirs = { ...o.about, author: 'customer' };
  const seen = o.seen ? await seenMessage(tx, theirs, o.seen) : null;
  if (o.seen !== undefined && !seen) return;
  await tx.message.updateMany({
    where: { ...theirs, settledAt: null, ...(seen && upTo(seen)) },
    data: { settledAt: o.now, settledById: o.actor.id, settledHow: 'answered' },
  });
}

/**
 * An answer that stood in a message and was written down from it: the customer is told so by mail, and what was seen of their words
 * waits no more. One that came some other way leaves them waiting.
 */
export async function settleTold(tx: Tx, o: { jobId: string; now: Date } & AnsweredBy): Promise<void> {
  if (o.told === undefined) return;
  const { jobId, told, actor, now, seen = '' } = o;
  if (told.how === 'e-mail') await settleAnswered(tx, { about: { jobId }, actor, now, seen });
}

/**
 * Settles what a customer wrote up to the message that a person saw last; what came after it goes on waiting. False where that
 * had been done before.
 */
export async function writeSettled(
  tx: Tx,
  o: { about: About; messageId: string; how: SettledBy; note: string; actor: { id: string }; now: Date },
): Promise<boolean> {
  const theirs = { ...o.about, author: 'customer' };
  const seen = await seenMessage(tx, theirs, o.messageId);
  if (!seen) throw new Refusal('not-found', 'There is no such message.');
  const { count } = await tx.message.updateMany({
    where: { ...theirs, settledAt: null, ...upTo(seen) },
    data: { settledAt: o.now, settledById: o.actor.id, settledHow: o.how, settledNote: o.note },
  });
  return count > 0;
}

type Seen = { id: string; at: Date };

function seenMessage(tx: Tx, theirs: About & { author: string }, id: string): Promise<Seen | null> {
  return tx.message.findFirst({ where: { ...theirs, id }, select: { id: true, at: true } });
}

/** That message and those before it, in the order of the page. */
function upTo({ id, at }: Seen) {
  return { OR: [{ at: { lt: at } }, { at, id: { lte: id } }] };
}
