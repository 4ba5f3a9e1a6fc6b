import { parseEvent } from './rules/events';

/**
 * When a unit was last begun anew, because the customer had us look again or the work was opened again; null when never. Work
 * and readings from before say nothing of the unit as it will go back. Events in their order.
 */
export function reopenedAt(events: readonly { kind: string; at: Date; data: unknown }[]): Date | null {
  return events.findLast((event) => event.kind === 'claim-contested' || isReopening(event))?.at ?? null;
}

function isReopening({ kind, data }: { kind: string; data: unknown }): boolean {
  if (kind !== 'moved') return false;
  const event = parseEvent('moved', data);
  return event.kind === 'moved' && event.data.move === 'reopen-work';
}
