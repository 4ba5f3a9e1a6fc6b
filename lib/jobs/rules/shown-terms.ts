/**
 * What a booking agrees to beside its price: the fee of a return in minor units, the terms of cover by their id, and the terms
 * of the workshop by theirs, empty where it has published none.
 */
export type ShownTerms = { returnFeeMinor: number; policyVersionId: string; termsId: string };

/** What to say to whoever read other terms of the workshop than stand now; empty where they are the same. */
export function changedText(shown: string, now: string): string {
  return shown === now ? '' : 'Our terms have changed since you saw them. Please read them anew.';
}

/**
 * What to say to a customer who read other terms above the button than hold now; null where they are the same. Nobody is
 * bound to what they have not seen.
 *
 * changedTerms({ returnFeeMinor: 960, … }, { returnFeeMinor: 1200, … }, money)
 *   -> 'The return fee is now £12.00, and not the £9.60 that you saw.'
 */
export function changedTerms(
  shown: ShownTerms,
  now: ShownTerms,
  money: (minor: number) => string,
): string | null {
  const said = [
    shown.returnFeeMinor === now.returnFeeMinor
      ? ''
      : `The return fee is now ${money(now.returnFeeMinor)}, and not the ${money(shown.returnFeeMinor)} that you saw.`,
    shown.policyVersionId === now.policyVersionId
      ? ''
      : 'What our promise covers has changed since you saw it. It is shown anew.',
    changedText(shown.termsId, now.termsId),
  ].filter((sentence) => sentence !== '');
  return said.length === 0 ? null : said.join(' ');
}
