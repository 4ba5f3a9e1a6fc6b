import { CAUSES, type Cause, RULINGS, type Ruling } from './rules/causes';
import { isCoveredAtLeastPartly, isFinalRuling } from './rules/ruling';

export type StoredRuling = { cause: Cause; ruling: Ruling; isFinal: boolean };

type RuledRow = { cause: string | null; ruling: string | null; secondLookAt: Date | null };

/** A claim's ruling read back from its row; final once nobody has to look at it a second time. */
export function readRuling(claim: RuledRow): StoredRuling | null {
  const cause = CAUSES.find((known) => known === claim.cause);
  const ruling = RULINGS.find((known) => known === claim.ruling);
  if (!cause || !ruling) return null;
  return { cause, ruling, isFinal: isFinalRuling({ ruling, secondLookAt: claim.secondLookAt }) };
}

/** The ruling that a claim's customer was told; null before it, and on a job without a claim. */
export function toldRuling(claim: RuledRow | null): Ruling | null {
  const ruled = claim && readRuling(claim);
  return ruled?.isFinal ? ruled.ruling : null;
}

/**
 * Whether a claim's customer gets the postage of their parcel back: once it is ruled covered, at least in part (common practice,
 * no source). False for a job without a claim.
 */
export function paysPostage(claim: RuledRow | null): boolean {
  return isCoveredAtLeastPartly(toldRuling(claim));
}
