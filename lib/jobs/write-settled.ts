import type { Tx } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import type { SettledBy } from './rules/settled';

export type About = { jobId: string } | { quoteId: string };

/** The answer to everything a customer wrote on a job or a quote until now, inside the transaction that gives it. */
export async function settleAnswered(
  tx: Tx,
  o: { about: About; actor: { id: string }; now: Date },
): Promise<void> {
  await tx.message.updateMany({
    where: { ...o.about, author: 'customer', settledAt: null },
    data: { settledAt: o.now, settledById: o.actor.id, settledHow: 'answered' },
  });
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
  const seen = await tx.message.findFirst({
    where: { ...theirs, id: o.messageId },
    select: { id: true, at: true },
  });
  if (!seen) throw new Refusal('not-found', 'There is no such message.');
  const { count } = await tx.message.updateMany({
    where: {
      ...theirs,
      settledAt: null,
      OR: [{ at: { lt: seen.at } }, { at: seen.at, id: { lte: seen.id } }],
    },
    data: { settledAt: o.now, settledById: o.actor.id, settledHow: o.how, settledNote: o.note },
  });
  return count > 0;
}
