import type { Stage } from '@/lib/jobs/rules/stages';
import { wasRepaired } from '@/lib/jobs/rules/was-repaired';

/** Before proving a part can be taken out again; a unit that is turned down goes back without it. */
const OPEN: readonly Stage[] = ['assessing', 'awaiting-approval', 'awaiting-parts', 'on-bench', 'declined'];
/** Here as well, where the unit was not repaired. What was proved goes back with the parts it was proved with. */
const PACKED: readonly Stage[] = ['ready', 'unclaimed'];

/**
 * The stages in which a part of this job may go back into stock; a certificate stands on none of them.
 *
 * @param reached the stages the job came to, in order; events that moved nothing are null
 */
export function putBackStages(reached: readonly (string | null)[]): readonly Stage[] {
  return wasRepaired(reached) ? OPEN : [...OPEN, ...PACKED];
}
