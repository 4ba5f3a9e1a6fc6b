import type { Stage } from './stages';

/** What is recorded of a job and can be taken back where it was by mistake. */
export const ENTRIES = ['finding', 'work', 'wire', 'photo'] as const;
export type EntryKind = (typeof ENTRIES)[number];

export type TakeBackFacts = {
  what: EntryKind;
  /** staff who recorded it; null for a customer's photo */
  recordedBy: string | null;
  who: { id: string; isOwner: boolean };
  stage: Stage;
  /** it left once, so that its papers are issued */
  hasLeft: boolean;
  /** its checks passed, and it goes back repaired */
  isRepaired: boolean;
  /** the customer was asked for a changed price once */
  wasAsked: boolean;
  /** of what counts, there is no other of this kind */
  isOnly: boolean;
  /** it, or a photo that goes with it, is the evidence of a point of a claim's inspection */
  isEvidence: boolean;
  /** the last photo of a serial that a person settled since the unit came; of an arrival where it was settled by photos of that */
  isProofOfSerial: boolean;
};

export type TakeBackReason =
  | 'from-the-customer'
  | 'not-yours'
  | 'left-before'
  | 'only-work'
  | 'price-rests-on-it'
  | 'evidence'
  | 'proof-of-serial';

/**
 * Whether an entry may be taken back, by whoever recorded it or the owner. Work and wires stand on the certificate, and minutes in
 * what a return cost, so that they stay once the unit has left or its job is closed; a finding or a photo goes at any time, since it
 * may show another customer's things. What a price, a ruling, a proof or a settled serial stands on stays until there is another.
 *
 * mayTakeBack({ what: 'work', hasLeft: true, … }) -> { allowed: false, reason: 'left-before' }
 */
export function mayTakeBack(
  facts: TakeBackFacts,
): { allowed: true } | { allowed: false; reason: TakeBackReason } {
  const reason = whyNot(facts);
  return reason === null ? { allowed: true } : { allowed: false, reason };
}

function whyNot(o: TakeBackFacts): TakeBackReason | null {
  if (o.recordedBy === null) return 'from-the-customer';
  if (o.recordedBy !== o.who.id && !o.who.isOwner) return 'not-yours';
  if ((o.what === 'work' || o.what === 'wire') && (o.hasLeft || o.stage === 'closed')) return 'left-before';
  if (o.what === 'work' && o.isOnly && (o.stage === 'proving' || o.isRepaired)) return 'only-work';
  if (o.what === 'finding' && o.isOnly && o.wasAsked) return 'price-rests-on-it';
  if (o.isEvidence) return 'evidence';
  if (o.what === 'photo' && o.isProofOfSerial) return 'proof-of-serial';
  return null;
}

/** Why an entry stays, in the words of the job sheet. */
export const TAKE_BACK_REASONS: Record<TakeBackReason, string> = {
  'from-the-customer': 'The customer sent this photo; it is not ours to take back.',
  'not-yours': 'Whoever recorded it, or the owner, takes it back.',
  'left-before': 'The unit left or its job is closed, and its certificate and figures stand on this.',
  'only-work':
    'It is the only work recorded, and the unit is proved on it: take the job back to the bench, and record what was done first.',
  'price-rests-on-it':
    'The customer was asked for a price with this finding alone: record what was found first.',
  evidence:
    'A photo of it is evidence in the inspection of the claim: answer that point with another photo first.',
  'proof-of-serial':
    'The serial was settled by this photo: add another photo of the serial first, as “The serial”.',
};
