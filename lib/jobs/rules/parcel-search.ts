/** How the search for a parcel on its way back ends, where its carrier does not bring it back to us. */
export const SEARCH_ENDS = ['delivered', 'lost'] as const;
export type SearchEnd = (typeof SEARCH_ENDS)[number];

export const SEARCH_END_WORDS: Record<SearchEnd, { label: string; told: string }> = {
  delivered: { label: 'It has reached the customer', told: 'Your parcel was found: it was delivered.' },
  lost: { label: 'It is lost for good', told: 'Your parcel was lost on its way back to you.' },
};

/** How the newest search stands; the words are the workshop's, for the customer. */
export type ParcelSearch = { state: 'sought' | SearchEnd; note: string };

/** Events that begin or end a search: the parcel comes back, or it had never left, too. */
export const SEARCH_EVENTS = ['parcel-sought', 'search-ended', 'came-back', 'dispatch-undone'] as const;

export type SeekFacts = {
  /** a carrier was given the unit, and did not bring it back */
  isWithCarrier: boolean;
  isSought: boolean;
  /** the data of its customer was removed: nobody can be told */
  isErased: boolean;
};

export type SeekReason = 'no-carrier' | 'sought-already' | 'erased';

/**
 * Whether a parcel may be looked for, also once its job is closed, and after a search that ended.
 *
 * maySeek({ isWithCarrier: true, isSought: false, isErased: false }) -> { allowed: true }
 */
export function maySeek(o: SeekFacts): { allowed: true } | { allowed: false; reason: SeekReason } {
  const reason = whyNot(o);
  return reason === null ? { allowed: true } : { allowed: false, reason };
}

function whyNot({ isWithCarrier, isSought, isErased }: SeekFacts): SeekReason | null {
  if (!isWithCarrier) return 'no-carrier';
  if (isSought) return 'sought-already';
  return isErased ? 'erased' : null;
}

export const SEEK_REASONS: Record<SeekReason, string> = {
  'no-carrier': 'No carrier was given this unit.',
  'sought-already': 'This parcel is looked for already.',
  erased: 'The data of this customer was removed: there is nobody to tell.',
};

/** What has to be said where a search ends; a parcel that was delivered needs no words. */
export function needsWords(how: SearchEnd): boolean {
  return how === 'lost';
}
