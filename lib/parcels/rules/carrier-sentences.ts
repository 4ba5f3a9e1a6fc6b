import { formatMoney } from '@/lib/money/amount';
import type { CarrierAnswer, CarrierProblem, Unsaid } from './carriers';
import { centimetreText, kilogramText } from './measures';

/** Said whichever carrier was named: no parcel with such a battery is posted. The carrier's and the post's rules come first. */
export const NOT_POSTED =
  'With this battery the unit may not go by post or parcel carrier. Send it without the battery, taken out by somebody trained for it, or let the customer collect it. The rules for dangerous goods and the carrier’s own come first.';

type Money = { currency: string; locale: string };

/**
 * Why a carrier does not take a parcel, one sentence a reason, with the limit it breaks.
 * A post that takes up to 20 kg -> 'Too heavy: Sandmouth Post takes up to 20 kg.'
 */
export function problemSentences({ carrier, problems }: CarrierAnswer, money: Money): string[] {
  const sentence: Record<CarrierProblem, string> = {
    'too-heavy': `Too heavy: ${carrier.name} takes up to ${kilogramText(carrier.maxWeight)}.`,
    'too-long': `Too long: ${carrier.name} takes sides up to ${centimetreText(carrier.longestSide)} cm.`,
    'worth-too-much': `Worth too much: ${carrier.name} makes good up to ${formatMoney(carrier.maxValueMinor, money.currency, money.locale)}.`,
    'battery-by-road-only': `A battery outside its unit may not fly: ${carrier.name} does not keep parcels on the road.`,
    'battery-not-posted': NOT_POSTED,
  };
  return problems.map((problem) => sentence[problem]);
}

const UNSAID_WORDS: Record<Unsaid, string> = { weight: 'weight', size: 'size', value: 'value' };

/** What is still to be said before all limits of a carrier are compared: 'Not compared yet: size and value.'; '' when all is. */
export function unsaidSentence(unsaid: readonly Unsaid[]): string {
  if (unsaid.length === 0) return '';
  const words = unsaid.map((each) => UNSAID_WORDS[each]);
  const last = words.at(-1) ?? '';
  const text = words.length === 1 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
  return `Not compared yet: ${text}.`;
}
