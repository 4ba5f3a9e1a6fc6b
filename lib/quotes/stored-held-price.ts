import type { Day } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import type { JobRecord } from '@/lib/jobs/records';
import { heldPrice } from '@/lib/jobs/rules/asked-price';
import { parseEvent } from '@/lib/jobs/rules/events';
import { Refusal } from '@/lib/outcome';
import { offerOf } from './rules/agreed';
import { heldSentence, mayReplace } from './rules/held-price';

/**
 * Refuses to ask for a price that is above one still held. It was looked at when the price was written; the finding that the higher
 * one rests on may have been taken back since.
 */
export function requireHeldPrice(job: JobRecord, { today, locale }: { today: Day; locale: string }): void {
  const offer = offerOf(job);
  if (!offer) return;
  const held = heldPrice({ events: job.events, revisions: job.quotes[0]?.revisions ?? [], today });
  const next = {
    gross: offer.grossMinor,
    customerAsked: job.events.some((event) => isAskedFor(event, offer.revision)),
    isFaultFound: held?.isFaultFound,
    today,
  };
  if (held && !mayReplace(held, next))
    throw new Refusal('conflict', heldSentence(formatDay(held.validUntil, locale, 'weekday')));
}

/** Whether an event is the writing of that price for a change the customer asked for. */
function isAskedFor({ kind, data }: { kind: string; data: unknown }, revision: number): boolean {
  if (kind !== 'offer-written') return false;
  const event = parseEvent('offer-written', data);
  return (
    event.kind === 'offer-written' && event.data.revision === revision && event.data.customerAsked === true
  );
}
