import { isUniqueViolation } from '@/lib/db/errors';
import { type Tx, transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { assessClaim } from './assess-claim';
import type { Assessment } from './rules/reasons';
import { type ClaimTold, writeClaim } from './write-claim';

export type ClaimRequest = ClaimTold & {
  certificateNumber: string;
  /** the revision printed on the paper the customer holds; the one in force when not given */
  revision: number | null;
};

export type OpenedClaim =
  | { opened: true; claimNumber: string; jobNumber: string; token: string }
  | { opened: false; assessment: Assessment };

/**
 * Answers that open a claim: in cover, in the days of grace (a person decides), or a serial a person must confirm. The
 * last is only given where the right serial would open one too (rules/behind-serial.ts).
 */
export function opensClaim(assessment: Assessment, hasPhoto: boolean): boolean {
  switch (assessment.answer) {
    case 'covered-subject-to-inspection':
      return true;
    case 'lapsed':
      return assessment.nextStep?.kind === 'ask-a-person';
    case 'confirm-serial':
      return hasPhoto;
    default:
      return false;
  }
}

/**
 * Opens a claim and its free-of-charge job, or says why not.
 *
 * Two people may open a claim on one certificate at the same moment, for instance from the paper and from the mail.
 * The answer is worked out again inside the transaction, and where both still pass, the database's index of one open
 * claim a certificate lets the first in; the loser is told that a claim is open.
 */
export async function openClaim(o: ClaimRequest): Promise<OpenedClaim> {
  try {
    return await transaction((tx) => open(tx, o));
  } catch (error) {
    if (!isUniqueViolation(error, 'claim_one_open_per_certificate')) throw error;
    const { assessment } = await transaction((tx) => assessClaim(tx, o));
    return { opened: false, assessment };
  }
}

async function open(tx: Tx, o: ClaimRequest): Promise<OpenedClaim> {
  const { assessment, chain, isLate } = await assessClaim(tx, o);
  if (!chain || !opensClaim(assessment, o.photos.length > 0)) return { opened: false, assessment };
  await refuseSpentPhotos(tx, o.photos);
  const written = await writeClaim(tx, { ...o, chain, assessment, isLate, actor: { kind: 'customer' } });
  const { claimNumber, jobNumber, token } = written;
  return { opened: true, claimNumber, jobNumber, token };
}

/** A page gone back to carries the slips of photos that another form took: each stands at one thing only. */
async function refuseSpentPhotos(tx: Tx, photos: ClaimRequest['photos']): Promise<void> {
  const spent = await tx.photo.count({ where: { fileKey: { in: photos.map(({ fileKey }) => fileKey) } } });
  if (spent === 0) return;
  const sentence = 'These photos came with another form already. Untick them and choose them again.';
  throw new Refusal('invalid', sentence, 'photos');
}
