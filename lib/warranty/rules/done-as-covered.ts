import { parseEvent } from '@/lib/jobs/rules/events';
import { isRepaired } from '@/lib/jobs/rules/repaired';
import { RULINGS } from './causes';
import { isCoveredAtLeastPartly } from './ruling';

/**
 * Whether a claim's unit goes back repaired, and was proved under a ruling that covered something: its customer was told so, and a
 * later ruling that covers nothing would leave what was done on no certificate. Events of the job in their order.
 *
 * Example: ruled partly covered, proved, and then taken back by the owner: true.
 */
export function isDoneAsCovered(
  events: readonly { kind: string; data: unknown; fromStage: string | null; toStage: string | null }[],
): boolean {
  if (!isRepaired(events)) return false;
  const proved = events.findLastIndex(
    ({ fromStage, toStage }) => fromStage === 'proving' && toStage === 'ready',
  );
  const ruled = events.slice(0, proved).findLast(({ kind }) => kind === 'claim-ruled');
  const event = ruled && parseEvent('claim-ruled', ruled.data);
  if (event?.kind !== 'claim-ruled') return false;
  return isCoveredAtLeastPartly(RULINGS.find((known) => known === event.data.ruling) ?? null);
}
