/** Said where somebody would put a loose battery into a parcel of ours. */
export const LOOSE_BATTERY =
  'Please keep loose batteries and power banks at home: they must not travel in this parcel. Ask us first if you think that we need one';

const BATTERIES = String.raw`batter(?:y|ies)|accumulators?|akkus?|power\s?banks?|cells?`;
/** What is named after a battery and is none. */
const NONE =
  'cover|door|lid|flap|case|box|holder|tray|compartment|clip|spring|contacts?|charger|lead|cable|adapter';
const NAMED = new RegExp(String.raw`(?<!\b(?:no|without)\s)\b(?:${BATTERIES})\b(?![\s-]+(?:${NONE})\b)`, 'i');

/**
 * Whether words about what else is in a parcel name a battery that would lie in it loose. By ordinary post a lithium battery goes
 * fitted in its unit (published terms of postal carriers; IATA packing instructions 965 and 966 for cells alone or beside a unit ask
 * for more than a slip can tell). It reads English words: a person still compares what came.
 *
 * namesLooseBattery('Spare battery') -> true; namesLooseBattery('Battery cover') -> false
 */
export function namesLooseBattery(text: string): boolean {
  return NAMED.test(text);
}
