import { type Day, day } from '@/lib/calendar/day';
import { parseEvent } from './events';
import type { Decision } from './unclaimed';

export type OwnerDecision = { decision: Decision; note: string; until: Day | null; at: Date };

/** A row of a job's history, its data unread. */
export type UnitEvent = {
  kind: string;
  at: Date;
  fromStage: string | null;
  toStage: string | null;
  data: unknown;
};

/** Events after which a unit is ready as it was before it went: its carrier brought it back, or it never left. */
const STILL_READY: ReadonlySet<string> = new Set(['came-back', 'dispatch-undone']);

/**
 * The owner's newest decision about a unit that nobody claimed, from a job's events in order; null without one, and after
 * the unit became ready again by anything but that decision itself. Work that was opened again and proved
 * takes nothing from it, nor does a unit that is here although it was recorded as gone.
 */
export function lastDecision(events: readonly UnitEvent[]): OwnerDecision | null {
  const last = events.findLast(
    (event, index) =>
      event.kind === 'unclaimed-decided' ||
      (event.toStage === 'ready' && !STILL_READY.has(event.kind) && !isProvedAgain(events, index)),
  );
  if (last?.kind !== 'unclaimed-decided') return null;
  const event = parseEvent('unclaimed-decided', last.data);
  if (event.kind !== 'unclaimed-decided') return null;
  const { decision, note, until } = event.data;
  return { decision, note, until: until === null ? null : day(until), at: last.at };
}

/** Whether a unit became ready after the work on it had been opened again. */
function isProvedAgain(events: readonly UnitEvent[], index: number): boolean {
  const left = events
    .slice(0, index)
    .findLast(({ fromStage, toStage }) => fromStage === 'ready' || toStage === 'ready');
  return left?.fromStage === 'ready' && left.toStage === 'on-bench';
}

/** True where the owner decided to send a unit back with something still to pay. */
export function isOwedWaived(events: readonly UnitEvent[]): boolean {
  return lastDecision(events)?.decision === 'send-back-unpaid';
}
