import type { Tx } from '@/lib/db/transaction';
import { type Actor, actorId } from '@/lib/jobs/actor';
import { Refusal } from '@/lib/outcome';
import { QUOTE_EVENT_DATA, type QuoteEventData } from './rules/quote-events';
import type { RequestState } from './rules/request-states';

export type QuoteEventWrite = {
  quoteId: string;
  actor: Actor;
  now: Date;
  event: QuoteEventData;
  /** The version and states the caller decided on. */
  expected?: { version?: number; states?: readonly RequestState[] };
  to?: RequestState;
};

/**
 * Changes a quote that was asked for and writes its event in one go.
 *
 * The rows decide between two at once: the quote's own is raised first and stays locked, so that the request's state is
 * read after whoever came before has committed. Whoever finds another version or state loses with a conflict.
 */
export async function writeQuoteEvent(tx: Tx, write: QuoteEventWrite): Promise<number> {
  const { quoteId, expected, to } = write;
  const [raised] = await tx.quote.updateManyAndReturn({
    where: { id: quoteId, ...(expected?.version === undefined ? {} : { version: expected.version }) },
    data: { version: { increment: 1 } },
    select: { version: true },
  });
  if (!raised) throw changedMeanwhile();
  const inState = {
    quoteId,
    ...(expected?.states === undefined ? {} : { state: { in: [...expected.states] } }),
  };
  const held =
    to === undefined
      ? await tx.quoteRequest.count({ where: inState })
      : (await tx.quoteRequest.updateMany({ where: inState, data: { state: to } })).count;
  if (held === 0) throw changedMeanwhile();
  const { version } = raised;
  await tx.quoteEvent.create({
    data: {
      quoteId,
      version,
      kind: write.event.kind,
      at: write.now,
      actorKind: write.actor.kind,
      actorId: actorId(write.actor),
      data: QUOTE_EVENT_DATA[write.event.kind].parse(write.event.data),
    },
    select: { id: true },
  });
  return version;
}

function changedMeanwhile(): Refusal {
  return new Refusal(
    'conflict',
    'This quote changed while you were looking at it. Nothing of yours was saved yet.',
  );
}
