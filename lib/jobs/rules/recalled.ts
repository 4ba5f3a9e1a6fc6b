import { parseEvent } from './events';

/**
 * Parts on a job whose lot was recalled since they were fitted, each once; put back, they are no longer on it. What cannot be trusted
 * must not leave the house.
 * Example: a letter about lot L-2611 while the job carries it gives ['USB-C socket, lot L-2611'].
 */
export function recalledParts(
  events: readonly { kind: string; data: unknown }[],
  uses: readonly { part: string; lot: string }[],
): string[] {
  const named = ({ part, lot }: { part: string; lot: string }) => `${part}, lot ${lot}`;
  const recalled = events.flatMap(({ kind, data }) => {
    if (kind !== 'lot-recalled') return [];
    const event = parseEvent('lot-recalled', data);
    return event.kind === 'lot-recalled' ? [named(event.data)] : [];
  });
  return [...new Set(uses.map(named))].filter((use) => recalled.includes(use));
}
