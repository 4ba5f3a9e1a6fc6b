import { db } from '@/lib/db/client';
import { COUNTS, type JobRecord, readJob } from '@/lib/jobs/records';
import { readNumber } from '@/lib/numbers/job-number';
import { type CertificateRecord, type Chain, readChain } from './records';
import type { Contact } from './rules/claimant';

export type ClaimRow = NonNullable<JobRecord['claim']>;

/** A repair the certificate stands on: the first one, or one made under an earlier claim. */
export type RepairOfChain = { jobNumber: string; revision: number; claimNumber: string | null };

export type ClaimCase = {
  claim: ClaimRow;
  /** the free-of-charge job of the returned unit */
  job: JobRecord;
  chain: Chain;
  /** the revision in force when the claim was opened */
  certificate: CertificateRecord;
  /** oldest first */
  repairs: RepairOfChain[];
  /** the repair the returned unit is compared with */
  repair: JobRecord;
  /** the repair the certificate began with, and whose it was */
  first: { jobNumber: string; customer: Contact };
};

export type ClaimIds = { id: string; number: string; jobNumber: string };

/** The claim an address names, in any spelling of its number; null when there is none. */
export async function findClaim(text: string): Promise<ClaimIds | null> {
  const reading = readNumber(text);
  if (!reading.ok || reading.kind !== 'C') return null;
  const claim = await db.claim.findUnique({
    where: { number: reading.number },
    select: { id: true, number: true, job: { select: { number: true } } },
  });
  return claim && { id: claim.id, number: claim.number, jobNumber: claim.job.number };
}

/**
 * Everything the claims desk shows of one claim; null for a number nobody knows. `compareWith` is the number of one of the
 * chain's repairs; without it the last one before this claim is taken, because its work is what may have failed.
 */
export async function readClaimCase(text: string, compareWith: string | null): Promise<ClaimCase | null> {
  const ids = await findClaim(text);
  const job = ids && (await readJob({ number: ids.jobNumber }));
  if (!job?.claim) return null;
  const { claim } = job;
  const chain = await readChain(claim.certificateNumber);
  const certificate = chain?.revisions.find((revision) => revision.id === claim.certificateId);
  if (!chain || !certificate) throw new Error('a claim stands on a certificate that is not there');

  const repairs = await repairsOf(chain, certificate.revision);
  const chosen = repairs.find((each) => each.jobNumber === compareWith) ?? repairs.at(-1);
  const repair = chosen ? await readJob({ number: chosen.jobNumber }) : null;
  if (!repair) throw new Error('a certificate stands on no repair');
  return { claim, job, chain, certificate, repairs, repair, first: await firstOf(chain) };
}

async function firstOf({ revisions, inForce }: Chain): Promise<ClaimCase['first']> {
  const { number, customer } = await db.job.findUniqueOrThrow({
    where: { id: (revisions[0] ?? inForce).jobId },
    select: { number: true, customer: { select: { name: true, email: true } } },
  });
  return { jobNumber: number, customer };
}

/** Jobs of the chain up to a revision at which work was done; a revision issued only for days given back has none. */
async function repairsOf(chain: Chain, upTo: number): Promise<RepairOfChain[]> {
  const revisions = chain.revisions.filter((revision) => revision.revision <= upTo);
  const jobs = await db.job.findMany({
    where: { id: { in: revisions.map((revision) => revision.jobId) }, work: { some: COUNTS } },
    select: { id: true, number: true, claim: { select: { number: true } } },
  });
  return revisions.flatMap((revision) => {
    const job = jobs.find((each) => each.id === revision.jobId);
    if (!job) return [];
    return [{ jobNumber: job.number, revision: revision.revision, claimNumber: job.claim?.number ?? null }];
  });
}
