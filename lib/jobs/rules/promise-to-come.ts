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

/**
 * A yes to a price gives a day of its own, although one stands in the records: that was the claim's, which a ruling that covers
 * nothing called off, and no repair was agreed to since.
 *
 * isPromisedAnew({ kind: 'claim', ruling: 'not-covered', isContractMade: false }) -> true
 */
export function isPromisedAnew(facts: Pick<JobFacts, 'kind' | 'ruling' | 'isContractMade'>): boolean {
  const { kind, ruling, isContractMade } = facts;
  return kind === 'claim' && ruling !== null && !isCoveredAtLeastPartly(ruling) && !isContractMade;
}

type ToComeFacts = OverFacts &
  Pick<JobFacts, 'isPriceAgreed' | 'hasOpenOffer'> & {
    /** the claim was inspected, and the unit works on the bench */
    isNoFault: boolean;
  };

/**
 * When a day is promised where none stands, in the customer's words; null where none is to come. A unit in which nothing was
 * found goes back without a price, also where its claim is not covered since it came after cover had ended.
 *
 * promiseToCome({ stage: 'booked', … }) -> 'once it is here'
 */
export function promiseToCome(facts: ToComeFacts): string | null {
  const { stage, ruling, isNoFault, isPriceAgreed, hasOpenOffer } = facts;
  if (stage === 'booked') return 'once it is here';
  if (!PROMISE_STAGES.includes(stage)) return null;
  const isPriceToCome = isPromiseOver(facts) ? ruling === 'not-covered' && !isNoFault : !isPriceAgreed;
  return isPriceToCome || hasOpenOffer ? 'with your yes to a price' : null;
}
