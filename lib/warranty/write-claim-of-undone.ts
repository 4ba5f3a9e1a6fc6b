import { isUniqueViolation } from '@/lib/db/errors';
import type { Tx } from '@/lib/db/transaction';
import type { JobRecord } from '@/lib/jobs/records';
import { parseEvent } from '@/lib/jobs/rules/events';
import { hasLeft } from '@/lib/jobs/rules/handover';
import { UNDO_REASONS } from '@/lib/jobs/rules/undone';
import { Refusal } from '@/lib/outcome';
import { writeWatch } from '@/lib/returns/write-watch';
import { readRuling } from './stored-ruling';
import { paidBack } from './write-closed-claim';

/**
 * What becomes of a job's claim when it is taken back that its unit left, `job` being as it was before. Where nothing was issued the
 * claim did not end either: it stands as it did, with its contest, and what it cost and the days it was here are counted when
 * the unit really leaves. One that got a certificate stays closed, and a parcel that never went cost it nothing.
 */
export async function writeClaimOfUndone(tx: Tx, job: JobRecord): Promise<void> {
  if (!job.claim) return;
  const events = [...job.events, { kind: 'dispatch-undone', data: null }];
  if (hasLeft(events)) await takeBackPostage(tx, job, job.claim);
  else await openAgain(tx, job.claim);
  await writeWatch(tx, [job.claim.certificateNumber]);
}

type Claim = NonNullable<JobRecord['claim']>;

async function openAgain(tx: Tx, claim: Claim): Promise<void> {
  const state = readRuling(claim)?.isFinal ? 'ruled' : 'open';
  try {
    await tx.claim.update({
      where: { id: claim.id },
      data: { state, closedAt: null, costMinutes: null, costPartsMinor: null, costPostageMinor: null },
      select: { id: true },
    });
  } catch (error) {
    // Another was opened on the certificate while this one counted as closed.
    if (!isUniqueViolation(error, 'claim_one_open_per_certificate')) throw error;
    throw new Refusal('conflict', UNDO_REASONS['claimed-since']);
  }
  await tx.heldInterval.deleteMany({ where: { claimNumber: claim.number } });
}

async function takeBackPostage(tx: Tx, job: JobRecord, claim: Claim): Promise<void> {
  const postage = postageOfDispatch(job, claim);
  if (postage === 0) return;
  await tx.claim.update({
    where: { id: claim.id },
    data: { costPostageMinor: { decrement: postage } },
    select: { id: true },
  });
}

/** What the last dispatch cost its claim, minor units. Where its event does not keep that yet, the claim's only one says it. */
function postageOfDispatch(job: JobRecord, claim: Claim): number {
  const dispatches = job.events.filter(({ kind }) => kind === 'sent-back');
  const last = dispatches.at(-1);
  const left = last && parseEvent('sent-back', last.data);
  if (left?.kind !== 'sent-back') return 0;
  if (left.data.postage !== undefined || dispatches.length > 1) return left.data.postage ?? 0;
  return (claim.costPostageMinor ?? 0) - paidBack(job);
}
