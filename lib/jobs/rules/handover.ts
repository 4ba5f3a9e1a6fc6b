import { parseEvent } from './events';

/** How a unit leaves: a carrier takes it, or its customer collects it here. */
export type Handover = { by: 'carrier'; carrier: string; carrierReference: string } | { by: 'collected' };

export const HANDOVERS = ['carrier', 'collected'] as const satisfies readonly Handover['by'][];

/** Whether everything is said of a handover that has to be: of a carrier its name and its reference. */
export function isHandoverNamed(handover: Handover): boolean {
  return handover.by === 'collected' || (handover.carrier !== '' && handover.carrierReference !== '');
}

/** Whether a unit that left was collected in person, by the last time it left; false while it never did. */
export function isCollected(events: readonly { kind: string; data: unknown }[]): boolean {
  const last = events.findLast(({ kind }) => kind === 'sent-back');
  const left = last && parseEvent('sent-back', last.data);
  return left?.kind === 'sent-back' && left.data.isCollected === true;
}
