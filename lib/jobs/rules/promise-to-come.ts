import { isCoveredAtLeastPartly } from '@/lib/warranty/rules/ruling';
import type { JobFacts } from './guards';
import { PROMISE_STAGES } from './stage-sets';

type OverFacts = Pick<JobFacts, 'stage' | 'kind' | 'ruling' | 'hasAgreedPaidOffer'>;

/**
 * No repair is to come that the day was promised for: it goes back as it is, or its claim covers none.
 *
 * isPromiseOver({ stage: 'assessing', kind: 'claim', ruling: 'not-covered', hasAgreedPaidOffer: false }) -> true
 */
export function isPromiseOver({ stage, kind, ruling, hasAgreedPaidOffer }: OverFacts): boolean {
  if (stage === 'declined') return true;
  const isNotCovered = kind === 'claim' && ruling !== null && !isCoveredAtLeastPartly(ruling);
  return isNotCovered && !hasAgreedPaidOffer && PROMISE_STAGES.includes(stage);
}
