/**
 * When the customer last had us look again at a unit, null when never: work and readings from before say nothing of the repair
 * that follows. Events in their order.
 */
export function reopenedAt(events: readonly { kind: string; at: Date }[]): Date | null {
  return events.findLast((event) => event.kind === 'claim-contested')?.at ?? null;
}
