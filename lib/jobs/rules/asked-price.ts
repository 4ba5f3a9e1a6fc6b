import { type Day, dayFromDate } from '@/lib/calendar/day';
import { type HeldOffer, isHeld } from '@/lib/quotes/rules/held-price';
import { parseEvent } from './events';

/** What happened to a job, in order; a row of its history as far as a price that was asked for goes. */
type Happened = { kind: string; data: unknown; at: Date; toStage: string | null };

export type EndedPrice = {
  revision: number;
  how: 'lapsed' | 'taken-back';
  endedAt: Date;
  /** why it was taken back, in words for the customer; '' where it lapsed, or was taken back before that was asked */
  reason: string;
};

type Sent = { revision: number; grossMinor: number; validUntil: Date };

/**
 * The price that the customer was asked about last and has not answered, through its last day, though it was taken back: what
 * they were told of how long it holds stands. Where the ruling it came with is contested or taken back, it ends. `isFaultFound`: a
 * finding was written down since. Null where there is none.
 */
export function heldPrice(o: {
  events: readonly Happened[];
  revisions: readonly Sent[];
  today: Day;
}): (HeldOffer & { isFaultFound: boolean }) | null {
  const index = lastAsked(o.events);
  const asked = askedAt(o.events, index);
  const sent = o.revisions.find(({ revision }) => revision === asked?.revision);
  const since = o.events.slice(index + 1);
  const isOver = since.some(({ kind }) => OVER.includes(kind));
  if (!sent || isOver || !isHeld(dayFromDate(sent.validUntil), o.today)) return null;
  return {
    gross: sent.grossMinor,
    validUntil: dayFromDate(sent.validUntil),
    isFaultFound: findingsOf(since) > 0,
  };
}

/** How many findings were recorded and not taken back since. */
function findingsOf(events: readonly Happened[]): number {
  const left = new Set<string>();
  for (const { kind, data } of events) {
    const event = kind === 'finding-recorded' || kind === 'entry-taken-back' ? parseEvent(kind, data) : null;
    if (event?.kind === 'finding-recorded') left.add(event.data.findingId);
    if (event?.kind === 'entry-taken-back') left.delete(event.data.id);
  }
  return left.size;
}

/** The price whose end led the job back to assessing, while nothing has become of it since; null otherwise. */
export function endedPrice(events: readonly Happened[]): EndedPrice | null {
  const last = events.findLast(({ toStage }) => toStage !== null);
  const asked = askedAt(events, lastAsked(events));
  if (!last || !asked) return null;
  if (last.kind === 'offer-lapsed') return { ...asked, how: 'lapsed', endedAt: last.at, reason: '' };
  const move = movedBy(last);
  return move?.move === 'take-back-price'
    ? { ...asked, how: 'taken-back', endedAt: last.at, reason: move.note }
    : null;
}

/**
 * A ruling that is contested, or taken back by the owner, is made anew, and with it what is to pay: a price beside the old one is
 * for other work.
 */
const OVER = ['offer-decided', 'offer-lapsed', 'claim-contested', 'claim-reopened'];

function lastAsked(events: readonly Happened[]): number {
  return events.findLastIndex((event) => movedBy(event)?.move === 'ask-approval');
}

/** The price written last before it was asked for at a place in the history. */
function askedAt(events: readonly Happened[], index: number): { revision: number } | null {
  const written = events.slice(0, Math.max(0, index)).findLast(({ kind }) => kind === 'offer-written');
  const event = written && parseEvent('offer-written', written.data);
  return event?.kind === 'offer-written' ? { revision: event.data.revision } : null;
}

function movedBy({ kind, data }: Happened): { move: string; note: string } | null {
  if (kind !== 'moved') return null;
  const event = parseEvent('moved', data);
  return event.kind === 'moved' ? event.data : null;
}
