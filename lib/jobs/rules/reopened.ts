import { isMainsCheck } from '@/lib/bench/rules/mains-checks';
import { parseEvent } from './events';
import type { Stage } from './stages';

/** Where all work is done: who is agreed on more then begins anew. */
const DONE: readonly (Stage | null)[] = ['proving', 'ready'];

/**
 * When a unit was last begun anew, because the customer had us look again, the owner did, the work was opened again, or a yes to more of
 * it was written down after it was done; null when never. Work and readings from before say nothing of the unit as it will go back. Events in their order.
 */
export function reopenedAt(
  events: readonly { kind: string; at: Date; data: unknown; fromStage: string | null }[],
): Date | null {
  return (
    events.findLast(
      (event) =>
        event.kind === 'claim-contested' ||
        event.kind === 'claim-reopened' ||
        (event.kind === 'offer-decided' && DONE.some((stage) => stage === event.fromStage)) ||
        moveOfEvent(event) === 'reopen-work',
    )?.at ?? null
  );
}

/**
 * From when the readings of a check count; null for all of them. An electrical safety test comes after the last repair (EN 50678, from
 * memory), so once a unit went back to the bench such a test is done again, whichever check had failed.
 */
export function countsFrom(
  events: Parameters<typeof reopenedAt>[0],
): (check: { caution: string | null }) => Date | null {
  const reopened = reopenedAt(events);
  const backAtBench = events.findLast((event) => moveOfEvent(event) === 'fail-check')?.at ?? null;
  const latest = backAtBench && (!reopened || backAtBench > reopened) ? backAtBench : reopened;
  return (check) => (isMainsCheck(check) ? latest : reopened);
}

function moveOfEvent({ kind, data }: { kind: string; data: unknown }): string | null {
  if (kind !== 'moved') return null;
  const event = parseEvent('moved', data);
  return event.kind === 'moved' ? event.data.move : null;
}
