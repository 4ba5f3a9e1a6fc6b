import { isUniqueViolation } from '@/lib/db/errors';
import { type Tx, transaction } from '@/lib/db/transaction';
import type { StaffActor } from '@/lib/jobs/actor';
import { writeArrival } from '@/lib/jobs/write-arrival';
import { showNumber } from '@/lib/numbers/job-number';
import { Refusal } from '@/lib/outcome';
import { assessClaim } from './assess-claim';
import { deskOpening } from './rules/desk-opening';
import type { Assessment } from './rules/reasons';
import { type ClaimTold, writeClaim } from './write-claim';

export type ClaimAtDesk = ClaimTold & {
  certificateNumber: string;
  /** the unit is here and is taken in with the claim; otherwise the customer posts it */
  isHere: boolean;
  /** what came with a unit that is here */
  extra: readonly string[];
  /** the owner's, for a claim after the days of grace; '' otherwise */
  reason: string;
  actor: StaffActor;
};

type Opened = { claimNumber: string; jobNumber: string };

const IS_OPEN = 'A claim on this certificate is open already';

/**
 * Opens a claim in the customer's place: told by telephone, or found in a parcel that came without one, which is taken in with it.
 *
 * The customer may open the same claim at the same moment from the certificate. Both work the answer out inside their transaction,
 * and where both pass, the database's index of one open claim a certificate lets the first in; the other is told that a claim is
 * open, and nothing of theirs is kept: no job, no arrival, no mail.
 */
export async function openClaimAtDesk(o: ClaimAtDesk): Promise<Opened> {
  try {
    return await transaction((tx) => open(tx, o));
  } catch (error) {
    if (!isUniqueViolation(error, 'claim_one_open_per_certificate')) throw error;
    throw new Refusal('conflict', `${IS_OPEN}.`);
  }
}

async function open(tx: Tx, o: ClaimAtDesk): Promise<Opened> {
  const { assessment, chain, isLate } = await assessClaim(tx, { ...o, revision: null });
  const opening = deskOpening(assessment);
  if (!chain || opening === 'nobody') throw refusalOf(assessment);
  if (opening === 'owner') requireOwnersReason(o);
  const { actor, now, isHere, photos } = o;
  const claim = await writeClaim(tx, {
    ...o,
    chain,
    assessment,
    isLate: isLate || opening === 'owner',
    reason: opening === 'owner' ? o.reason : undefined,
    // What a person at the table photographed shows how the unit arrived.
    photos: isHere ? [] : photos,
  });
  const { jobId, version } = claim;
  if (isHere) {
    const { serial, extra } = o;
    const came = { serial, arrived: [], extra, photos, isUnbooked: true };
    await writeArrival(tx, { jobId, version, ...came, actor, now });
  }
  return { claimNumber: claim.claimNumber, jobNumber: claim.jobNumber };
}

function requireOwnersReason({ actor, reason }: ClaimAtDesk): void {
  if (actor.kind !== 'owner') {
    throw new Refusal(
      'not-allowed',
      'What it does is not covered any more, and the days of grace are over. Only the owner may open a claim on it now.',
    );
  }
  if (reason === '') {
    throw new Refusal(
      'invalid',
      'What it does is not covered any more, and the days of grace are over. Write why a claim is opened all the same.',
      'reason',
    );
  }
}

function refusalOf({ answer, nextStep }: Assessment): Refusal {
  if (nextStep?.kind === 'see-open-claim') {
    return new Refusal('conflict', `${IS_OPEN}: ${showNumber(nextStep.claimNumber)}.`);
  }
  switch (answer) {
    case 'other-unit':
      return new Refusal(
        'invalid',
        'This is the serial of another unit than the certificate’s, and cover follows the unit. Look again, or take it in without a claim.',
        'serial',
      );
    case 'outside-cover':
      return new Refusal('invalid', 'Choose what it does from the list, or “Something else”.', 'symptom');
    default:
      return new Refusal(
        'not-found',
        'This certificate is not known here, or its signature fails. Nothing was opened.',
      );
  }
}
