import type { Ruling } from '@/lib/warranty/rules/causes';
import { isCoveredAtLeastPartly } from '@/lib/warranty/rules/ruling';
import { WORK_STAGES } from './stage-sets';
import type { JobKind, Stage } from './stages';

/** Where a unit is looked at, worked on or proved: only there may its job be put under another repair of the catalogue by staff. */
export const UNDER_REPAIR_STAGES: readonly Stage[] = [...WORK_STAGES, 'proving'];

export type UnderRepairFacts = {
  kind: JobKind;
  stage: Stage;
  /** the final ruling of a claim; null for a repair, or while there is none */
  ruling: Ruling | null;
  /** it left once, so that its papers are issued */
  hasLeft: boolean;
};

export type UnderRepairReason = 'wrong-stage' | 'left-before' | 'not-ruled' | 'covered';

/**
 * Whether a job may be put under another repair, with its check sheet. What a certificate covers is proved on the sheet it was
 * proved on before, so that a claim stays under its repair until nothing of it is covered.
 *
 * mayPutUnder({ kind: 'repair', stage: 'assessing', ruling: null, hasLeft: false }) -> { allowed: true }
 */
export function mayPutUnder(
  facts: UnderRepairFacts,
): { allowed: true } | { allowed: false; reason: UnderRepairReason } {
  if (!UNDER_REPAIR_STAGES.includes(facts.stage)) return { allowed: false, reason: 'wrong-stage' };
  if (facts.hasLeft) return { allowed: false, reason: 'left-before' };
  if (facts.kind === 'claim' && facts.ruling === null) return { allowed: false, reason: 'not-ruled' };
  if (facts.kind === 'claim' && isCoveredAtLeastPartly(facts.ruling))
    return { allowed: false, reason: 'covered' };
  return { allowed: true };
}

/** Why a job stays under its repair, in the words of the job sheet. */
export const UNDER_REPAIR_REASONS: Record<UnderRepairReason, string> = {
  'wrong-stage':
    'A job is put under another repair while it is assessed, waits for parts, is on the bench or is proved.',
  'left-before': 'The unit left once, and its papers name the repair it was under.',
  'not-ruled': 'The claim is ruled on first: what is covered is proved on the sheet of its own repair.',
  covered: 'Part of this claim is covered, and is proved on the sheet of its own repair.',
};

/**
 * Whether another repair's check sheet may be added to what a unit passes, or taken away again: on a claim too, where paid work is done
 * beside what is covered.
 *
 * mayProveBeside({ stage: 'on-bench', hasLeft: false }) -> { allowed: true }
 */
export function mayProveBeside(
  facts: Pick<UnderRepairFacts, 'stage' | 'hasLeft'>,
): { allowed: true } | { allowed: false; reason: 'wrong-stage' | 'left-before' } {
  if (!UNDER_REPAIR_STAGES.includes(facts.stage)) return { allowed: false, reason: 'wrong-stage' };
  return facts.hasLeft ? { allowed: false, reason: 'left-before' } : { allowed: true };
}

/** Why what a unit has to pass stays as it is, in the words of the job sheet. */
export const BESIDE_REASONS = {
  'wrong-stage':
    'Another repair is proved on a job while it is assessed, waits for parts, is on the bench or is proved.',
  'left-before': 'The unit left once, and its papers say what was proved.',
} as const;

/**
 * Whether a price for another repair still names the one before in every line of labour: nobody could say later what of it is covered.
 *
 * namesOldAlone([{ kind: 'labour', description: 'Battery replaced' }], { name: 'Battery replaced', formerNames: [] }) -> true
 */
export function namesOldAlone(
  lines: readonly { kind: string; description: string }[],
  before: { name: string; formerNames: readonly string[] },
): boolean {
  const labour = lines.filter(({ kind }) => kind === 'labour');
  const old = [before.name, ...before.formerNames];
  return labour.length > 0 && labour.every(({ description }) => old.includes(description));
}
