import type { Stage } from '@/lib/jobs/rules/stages';

/**
 * What became of a claim that was ruled on; null while what its ruling announces is still to come.
 * - repaired: proved, and with the workshop or gone
 * - stopped, stopped-left: the repair was given up or withdrawn from, and the unit is still here, or went back
 * - left: it went back as it was
 * - kept: closed, and never went back
 */
export type ClaimEnd = 'repaired' | 'stopped' | 'stopped-left' | 'left' | 'kept';

export function claimEnd(o: {
  stage: Stage;
  isRepaired: boolean;
  /** it left, and no parcel of it came back */
  isGone: boolean;
  /** given up by the workshop, or withdrawn from */
  isStopped: boolean;
}): ClaimEnd | null {
  if (!ENDED.has(o.stage)) return null;
  if (o.isRepaired) return 'repaired';
  if (o.isStopped) return o.isGone ? 'stopped-left' : 'stopped';
  if (o.isGone) return 'left';
  return o.stage === 'closed' || o.stage === 'cancelled' ? 'kept' : null;
}

/** Stages after the work, or without any. */
const ENDED: ReadonlySet<Stage> = new Set<Stage>([
  'ready',
  'declined',
  'unclaimed',
  'sent-back',
  'closed',
  'cancelled',
]);
