import { may, type Role } from '@/lib/people/rules/roles';
import { type Cause, causeRow, type Ruling } from './causes';

/** A second cause found on the same unit, which the certificate does not cover. */
export type AlsoFound = Extract<Cause, 'separate-fault' | 'damage-after-return'>;

export type Findings = {
  cause: Cause;
  /** Null when the one cause explains everything. */
  alsoFound: AlsoFound | null;
  /** False when the person who inspected cannot say for sure. */
  isEvidenceClear: boolean;
  /** Photos attached to the inspection that show what the ruling rests on. */
  evidencePhotos: number;
  /** True when the claim was opened while cover ran, or a person let a late one in. */
  isWithinTerm: boolean;
};

export type RulingOutcome = {
  ruling: Ruling;
  /** True when the table said otherwise and only the missing or unclear evidence makes it covered. */
  isByDoubt: boolean;
};

/**
 * The ruling that follows from what was found.
 *
 * The cause decides by the table of causes. A ruling that stands on visible evidence becomes covered when the evidence is
 * unclear or no photo is attached: an unusual failure is not by itself the customer's fault (common practice, no source).
 * A covered cause together with a clear separate fault or later damage is 'partly'. No fault found is returned free. A
 * claim that came after cover ended and was not let in by a person is not covered, whatever the cause; what the law gives
 * is another matter and is named with the answer. Example: cause damage-after-return with no photo is covered, by doubt.
 */
export function rulingFor(findings: Findings): RulingOutcome {
  if (!findings.isWithinTerm) return plainly('not-covered');
  const row = causeRow(findings.cause);
  const isProved = findings.isEvidenceClear && findings.evidencePhotos > 0;
  if (row.needsVisibleEvidence)
    return isProved ? plainly(row.ruling) : { ruling: 'covered', isByDoubt: true };
  if (row.ruling === 'covered' && findings.alsoFound !== null)
    return isProved ? plainly('partly') : { ruling: 'covered', isByDoubt: true };
  return plainly(row.ruling);
}

function plainly(ruling: Ruling): RulingOutcome {
  return { ruling, isByDoubt: false };
}

/** A claim that came after cover had ended and was not let in, told apart by whether there is anything to repair. */
export type AfterCover = 'fault' | 'no-fault';

/**
 * Whether a claim is not covered because it came after cover had ended; null where that is not why.
 * Example: our own work on a late claim that was not let in is 'fault', no fault found on it 'no-fault'.
 */
export function afterCover(o: { ruling: Ruling; cause: Cause; isLetIn: boolean | null }): AfterCover | null {
  if (o.ruling !== 'not-covered' || o.isLetIn !== false) return null;
  return o.cause === 'no-fault-found' ? 'no-fault' : 'fault';
}

export type RulingNeed = 'evidence-photo' | 'written-reason' | 'owner-second-look';

/** Shorter than this is a label, not a reason. */
export const SHORTEST_REASON = 20;

/** What a ruling needs before it may be told to the customer: nothing when covered, all three otherwise. */
export function rulingNeeds(ruling: Ruling): RulingNeed[] {
  return ruling === 'covered' ? [] : ['evidence-photo', 'written-reason', 'owner-second-look'];
}

export type RulingDraft = Findings & {
  /** In the customer's words; they read it as it stands. */
  reasonText: string;
  /** Who looked a second time, and in which role; in a workshop of one it is the same person on a second visit. */
  secondLook: { userId: string; role: Role } | null;
};

export type RulingDecision = RulingOutcome & ({ allowed: true } | { allowed: false; missing: RulingNeed[] });

/**
 * Whether a ruling may be made now, and which it is. Refuses everything but 'covered' while evidence, a written reason of
 * 20 characters or the owner's second look is missing, and names what is missing.
 * Example: no-fault-found with a photo and a reason but no second look gives { allowed: false, missing: ['owner-second-look'] }.
 */
export function mayRule(draft: RulingDraft): RulingDecision {
  const outcome = rulingFor(draft);
  const missing = rulingNeeds(outcome.ruling).filter((need) => !isMet(need, draft));
  return missing.length === 0 ? { ...outcome, allowed: true } : { ...outcome, allowed: false, missing };
}

function isMet(need: RulingNeed, draft: RulingDraft): boolean {
  switch (need) {
    case 'evidence-photo':
      return draft.evidencePhotos > 0;
    case 'written-reason':
      return draft.reasonText.trim().length >= SHORTEST_REASON;
    case 'owner-second-look':
      return draft.secondLook !== null && may(draft.secondLook.role, 'second-look');
  }
}

export type ContestAnswer =
  | { allowed: true }
  | { allowed: false; reason: 'nothing-to-contest' | 'already-contested' };

/**
 * Whether the customer can contest a ruling on the private link: once, and only where something was not covered.
 * Example: a ruling of 'partly' that was never contested may be; a second time it may not.
 */
export function mayContest(o: { ruling: Ruling; timesContested: number }): ContestAnswer {
  if (o.ruling === 'covered') return { allowed: false, reason: 'nothing-to-contest' };
  return o.timesContested > 0 ? { allowed: false, reason: 'already-contested' } : { allowed: true };
}

/** True when cover is renewed for the touched lines, and when we must ask ourselves what would have caught this. */
export function isCoveredAtLeastPartly(ruling: Ruling | null): boolean {
  return ruling === 'covered' || ruling === 'partly';
}

/**
 * A ruling is final when nothing is missing any more: at once when covered, otherwise once the second look has been taken.
 * Example: 'not-covered' without a second look is not final, and the customer is not told yet.
 */
export function isFinalRuling(claim: { ruling: Ruling; secondLookAt: Date | null }): boolean {
  return claim.secondLookAt !== null || !rulingNeeds(claim.ruling).includes('owner-second-look');
}
