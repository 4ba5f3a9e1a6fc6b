import { type Day, dayFromDate } from '@/lib/calendar/day';
import { parseEvent } from '@/lib/jobs/rules/events';
import type { Stage } from '@/lib/jobs/rules/stages';
import type { Told } from '@/lib/jobs/rules/told';
import { isHeld } from './held-price';
import { parseQuoteEvent } from './quote-events';
import type { RequestState } from './request-states';

type Declined = { revision: number; state: string; validUntil: Date };

/**
 * The price to which its customer said no and may still say yes: the one that the no which stands was given to, while it is
 * held. A thumb on a phone presses the wrong button, and the price was promised to a day; nothing was done yet because of the no.
 *
 * heldNo([sent 1 declined, to 27 December], { no: 1, today: 1 December }) -> that revision
 */
export function heldNo<R extends Declined>(
  revisions: readonly R[],
  o: { no: number | null; today: Day },
): R | null {
  const declined = declinedBy(revisions, o);
  return declined && isHeld(dayFromDate(declined.validUntil), o.today) ? declined : null;
}

/** The price that a no which stands was given to, held still or not. */
export function declinedBy<R extends Declined>(revisions: readonly R[], o: { no: number | null }): R | null {
  return revisions.find(({ revision, state }) => revision === o.no && state === 'declined') ?? null;
}

type JobSoFar = {
  stage: Stage;
  events: readonly { kind: string; toStage: string | null; data: unknown }[];
};

/**
 * The revision to which a job's customer said no, as long as the unit waits to be packed for that; null where it waits for
 * another reason, such as a withdrawal, and once it is packed.
 */
export function noOfJob({ stage, events }: JobSoFar): number | null {
  if (stage !== 'declined') return null;
  const led = events.findLast(({ toStage }) => toStage === 'declined');
  if (led?.kind !== 'offer-decided') return null;
  const event = parseEvent('offer-decided', led.data);
  return event.kind === 'offer-decided' ? event.data.revision : null;
}

/** How a no to a revision was told, where it was not given on the customer's page. */
export function toldNo(events: JobSoFar['events'], { no }: { no: number }): Told | undefined {
  for (const { kind, data } of events) {
    const event = kind === 'offer-decided' ? parseEvent(kind, data) : null;
    if (event?.kind === 'offer-decided' && event.data.revision === no) return event.data.told;
  }
  return undefined;
}

type RequestSoFar = { state: RequestState; events: readonly { kind: string; data: unknown }[] };

/** The revision to which whoever asked for a price said no; null where the quote stands otherwise. */
export function noOfRequest({ state, events }: RequestSoFar): number | null {
  if (state !== 'declined') return null;
  const last = events.findLast(({ kind }) => kind === 'decided');
  const event = last && parseQuoteEvent('decided', last.data);
  return event?.kind === 'decided' ? event.data.revision : null;
}

/** The yes that a no was turned into, by its revision; null where that no was never taken back. */
export function yesAfterNo(
  events: readonly { kind: string; data: unknown }[],
  { no }: { no: number },
): number | null {
  for (const { kind, data } of events) {
    const event =
      kind === 'offer-decided'
        ? parseEvent(kind, data)
        : kind === 'decided'
          ? parseQuoteEvent(kind, data)
          : null;
    if (event?.kind !== 'offer-decided' && event?.kind !== 'decided') continue;
    if (event.data.afterNoTo === no) return event.data.revision;
  }
  return null;
}
