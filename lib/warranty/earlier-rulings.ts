import { parseEvent } from '@/lib/jobs/rules/events';
import { CAUSES, type Cause, RULINGS, type Ruling } from './rules/causes';

export type EarlierRuling = { cause: Cause; ruling: Ruling; at: Date };

/**
 * Rulings made on a claim before its contest, or before the owner last took one back, oldest first, from the history of its job:
 * the claim's own row forgets them.
 */
export function earlierRulings(
  events: readonly { kind: string; data: unknown; at: Date }[],
  before: 'claim-contested' | 'claim-reopened' = 'claim-contested',
): EarlierRuling[] {
  const openedAgain = events.findLastIndex((event) => event.kind === before);
  return events.slice(0, Math.max(0, openedAgain)).flatMap((event) => {
    if (event.kind !== 'claim-ruled') return [];
    const stored = parseEvent('claim-ruled', event.data);
    if (stored.kind !== 'claim-ruled') return [];
    const cause = CAUSES.find((known) => known === stored.data.cause);
    const ruling = RULINGS.find((known) => known === stored.data.ruling);
    return cause && ruling ? [{ cause, ruling, at: event.at }] : [];
  });
}
