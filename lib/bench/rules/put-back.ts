import { UNFETCHED } from '@/lib/jobs/rules/stage-sets';
import type { Stage } from '@/lib/jobs/rules/stages';

/** Before proving a part can be taken out again; a unit that is turned down goes back without it. */
const OPEN: readonly Stage[] = ['assessing', 'awaiting-approval', 'awaiting-parts', 'on-bench', 'declined'];

/**
 * The stages in which a part of a job may go back into stock; a certificate stands on none of them. What was proved goes back with
 * the parts it was proved with.
 */
export function putBackStages(isRepaired: boolean): readonly Stage[] {
  return isRepaired ? OPEN : [...OPEN, ...UNFETCHED];
}
