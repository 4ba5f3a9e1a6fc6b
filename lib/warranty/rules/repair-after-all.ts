import { isRepaired } from '@/lib/jobs/rules/repaired';
import { moveOf, type Stage } from '@/lib/jobs/rules/stages';
import type { Ruling } from './causes';
import { isCoveredAtLeastPartly } from './ruling';

/** What a ruling changes on the claim's job beside the claim itself. */
type Change = { from?: Stage; to?: Stage; set?: { withdrawnAt: null; readyAt?: null } };

/**
 * What a ruling that covers something changes on a job whose unit is on its way back unrepaired: it is taken up again. Only a
 * customer who contested a ruling and then withdrew from a paid repair leaves a claim to be ruled on there.
 */
export function repairAfterAll(
  { stage, events }: { stage: string; events: Parameters<typeof isRepaired>[0] },
  ruling: Ruling,
): Change {
  if (!isCoveredAtLeastPartly(ruling)) return {};
  const { from: stages, to } = moveOf('repair-after-all');
  const from = stages.find((each) => each === stage);
  // A price for the rest can be agreed to, and withdrawn from, anew.
  const set = { withdrawnAt: null };
  return from && !isRepaired(events) ? { from, to, set: { ...set, readyAt: null } } : { set };
}
