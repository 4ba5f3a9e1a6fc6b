import { CAUSES, type Cause, RULINGS, type Ruling } from './rules/causes';
import { rulingNeeds } from './rules/ruling';

export type StoredRuling = { cause: Cause; ruling: Ruling; isFinal: boolean };

/** A claim's ruling read back from its row; final once nobody has to look at it a second time. */
export function readRuling(claim: {
  cause: string | null;
  ruling: string | null;
  secondLookAt: Date | null;
}): StoredRuling | null {
  const cause = CAUSES.find((known) => known === claim.cause);
  const ruling = RULINGS.find((known) => known === claim.ruling);
  if (!cause || !ruling) return null;
  const needsSecondLook = rulingNeeds(ruling).includes('owner-second-look');
  return { cause, ruling, isFinal: !needsSecondLook || claim.secondLookAt !== null };
}
