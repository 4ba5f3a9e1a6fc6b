import { type EventKind, parseEvent } from '@/lib/jobs/rules/events';

/** What overtakes an answer that had come in time: there is nothing left that it could be the answer to. */
const OVERTAKEN_BY: readonly string[] = [
  'withdrawn',
  'repair-stopped',
  'repair-changed',
  'claim-ruled',
  'claim-contested',
  'claim-reopened',
  'sent-back',
] satisfies EventKind[];

/** Whether the customer was asked about a price and it lapsed, whatever became of it since. */
export function didLapse(events: readonly Happened[], { revision }: { revision: number }): boolean {
  return events.some(({ kind, toStage, data }) => {
    if (kind !== 'offer-lapsed' || toStage === null) return false;
    const event = parseEvent(kind, data);
    return event.kind === 'offer-lapsed' && event.data.revision === revision;
  });
}

type Happened = { kind: string; toStage: string | null; data: unknown };

/**
 * The price that the customer was asked about and that lapsed, as long as nothing has overtaken it since: a yes or a no that was told
 * while it was held can still be written down. A newer price has taken its place, though nobody was asked about it yet; a withdrawal,
 * a stop, another repair, another ruling and a unit that left have ended it. Null where there is none. Events in their order.
 *
 * lapsedPrice([1 accepted, 2 lapsed], [..., offer-lapsed of 2 to assessing]) -> that revision
 */
export function lapsedPrice<R extends { revision: number; state: string }>(
  revisions: readonly R[],
  events: readonly Happened[],
): R | null {
  const index = events.findLastIndex(({ kind, toStage }) => kind === 'offer-lapsed' && toStage !== null);
  const lapse = events[index];
  if (!lapse || events.slice(index).some(({ kind }) => OVERTAKEN_BY.includes(kind))) return null;
  const event = parseEvent('offer-lapsed', lapse.data);
  const newest = revisions.reduce<R | null>(
    (last, each) => (last && last.revision > each.revision ? last : each),
    null,
  );
  const isNewest = event.kind === 'offer-lapsed' && newest?.revision === event.data.revision;
  return newest && isNewest && newest.state === 'lapsed' ? newest : null;
}
