import { type Day, day } from '@/lib/calendar/day';
import type { Prisma } from '@/lib/db/generated/client';
import { parseEvent } from './rules/events';
import type { Decision } from './rules/unclaimed';

export type StoredDecision = { decision: Decision; note: string; until: Day | null; at: Date };

/** The events that say it. */
export const DECISION_EVENTS = {
  where: { OR: [{ toStage: 'ready' }, { kind: 'unclaimed-decided' }] },
  orderBy: { version: 'asc' },
  select: { kind: true, at: true, toStage: true, data: true },
} satisfies Prisma.Job$eventsArgs;

/**
 * The owner's newest decision about a unit that nobody claimed, from a job's events in order; null without one, and after
 * the unit became ready again by anything but that decision itself.
 */
export function lastDecision(
  events: readonly { kind: string; at: Date; toStage: string | null; data: unknown }[],
): StoredDecision | null {
  const last = events.findLast((event) => event.kind === 'unclaimed-decided' || event.toStage === 'ready');
  if (last?.kind !== 'unclaimed-decided') return null;
  const event = parseEvent('unclaimed-decided', last.data);
  if (event.kind !== 'unclaimed-decided') return null;
  const { decision, note, until } = event.data;
  return { decision, note, until: until === null ? null : day(until), at: last.at };
}

/** True where the owner decided to send a unit back with something still to pay. */
export function isOwedWaived(events: Parameters<typeof lastDecision>[0]): boolean {
  return lastDecision(events)?.decision === 'send-back-unpaid';
}
