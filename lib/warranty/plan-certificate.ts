import { type Day, dayInZone } from '@/lib/calendar/day';
import type { WorkingCalendar } from '@/lib/calendar/working';
import { symptomsOfRepairs } from '@/lib/catalogue/records';
import { type JobRecord, readJob } from '@/lib/jobs/records';
import {
  agreedBeside,
  agreedPrice,
  changesInstead,
  namesBefore,
  repairChanges,
} from '@/lib/jobs/rules/agreed-work';
import { hasLeft } from '@/lib/jobs/rules/handover';
import { isRepaired } from '@/lib/jobs/rules/repaired';
import { newNumber } from '@/lib/numbers/draw';
import { agreedOf } from '@/lib/quotes/rules/agreed';
import { type HeldRow, planAgain } from './plan-again';
import { type Chain, newestVersion, readChain, readCoverLine, repairOfCertificate } from './records';
import { firstCover } from './rules/first-cover';
import { firstWork } from './rules/first-work';
import { isOtherUnit } from './rules/other-unit';
import { renewCover } from './rules/renew';
import { isCoveredAtLeastPartly } from './rules/ruling';
import { startDay } from './rules/start-day';
import type { CoverLine, HeldInterval, PolicyTerms } from './rules/terms';
import { paidOf, readRenewal, stayOf, usesOf } from './stored-renewal';
import { readRuling } from './stored-ruling';
import { readTerms } from './stored-terms';

/** The certificate a dispatch is about to issue, before it is drawn and written. */
export type CertificatePlan = {
  number: string;
  revision: number;
  replaces: { id: string; revision: number } | null;
  policyVersionId: string;
  terms: PolicyTerms;
  lines: CoverLine[];
  /** lot of a fitted part, by line id */
  lots: ReadonlyMap<string, string>;
  held: HeldInterval[];
  /** the job whose work and readings stand behind the promise */
  provedBy: JobRecord;
};

/** What a dispatch does to the warranty: days held to be kept, and the certificate to be issued, either or neither. */
export type WarrantyPlan = { held: readonly HeldRow[]; certificate: CertificatePlan | null };

/**
 * Decides which certificate leaves with a unit. A repair gets revision 1 of a new one; a covered claim gets the next
 * revision of its own; a claim sent back without repair keeps the one it has, with its days given back, and gets a
 * next revision only where a stored line changes by them; a unit returned unrepaired gets none. A unit that turned out to be
 * another one than the certificate's changes nothing about that certificate; repaired, it gets one of its own. A unit that
 * leaves for the second time has its certificate, and gets none; one that was recorded as gone by mistake, and got none, leaves now.
 */
export async function planWarranty(
  job: JobRecord,
  o: { now: Date; timeZone: string; calendar: WorkingCalendar; transitDays: number },
): Promise<WarrantyPlan> {
  const today = dayInZone(o.now, o.timeZone);
  if (hasLeft(job.events)) return { held: await planAgain(job, o), certificate: null };
  const hasRepair = isRepaired(job.events);
  if (!job.claim) return { held: [], certificate: hasRepair ? await firstCertificate(job, today, o) : null };

  const chain = await readChain(job.claim.certificateNumber);
  if (!chain) throw new Error('a claim stands on a certificate that is not there');
  const isOther = isOtherUnit(chain.inForce.serialTyped, job.serialTyped);
  if (isOther) return { held: [], certificate: hasRepair ? await firstCertificate(job, today, o) : null };

  const heldNow = stayOf(job, job.claim, { ...o, today });
  const held = [{ ...heldNow, certificateNumber: job.claim.certificateNumber }];
  const ruled = readRuling(job.claim);
  if (!ruled?.isFinal) return { held, certificate: null };
  if (hasRepair && !isCoveredAtLeastPartly(ruled.ruling))
    return { held, certificate: await firstCertificate(job, today, o) };

  const certificate = hasRepair
    ? await nextRevision(job, job.claim, chain, heldNow, { ...o, today })
    : await keptRevision(chain, heldNow);
  return { held, certificate };
}

async function firstCertificate(
  job: JobRecord,
  today: Day,
  o: { calendar: WorkingCalendar; transitDays: number },
): Promise<CertificatePlan | null> {
  // What the contract promised; where there is none, for another unit that came in on a claim, what is promised today.
  const policy = job.policyVersion ?? newestVersion(job.repair.policy);
  const terms = readTerms(policy);
  const paid = paidOf(job);
  const { covered, lots } = firstWork({
    booked: (await isUnderClaimed(job)) ? null : { ...job.repair, ...otherNames(job, paid) },
    paid,
    known: await symptomsOfRepairs(job.model.id),
    uses: usesOf(job),
  });
  const lines = firstCover(covered, terms, startDay(terms.startEvent, today, o.calendar, o.transitDays));
  if (lines.length === 0) return null;
  return {
    number: newNumber('W'),
    revision: 1,
    replaces: null,
    policyVersionId: policy.id,
    terms,
    lines,
    lots,
    held: [],
    provedBy: job,
  };
}

/** The repairs its job was under that lines of the agreed price may be for, in the place of its own or beside it. */
function otherNames(job: JobRecord, lines: ReturnType<typeof paidOf>) {
  const changes = repairChanges(job.events);
  const price = agreedPrice({ agreedAt: agreedOf(job)?.decidedAt ?? null, lines, under: job.repair });
  return { before: namesBefore(changesInstead(changes, price)), beside: agreedBeside(changes, price) };
}

/**
 * Paid for on a claim is what the certificate it was opened on does not cover, so that the repair of that one is not what was done,
 * unless the job was put under another.
 */
async function isUnderClaimed(job: JobRecord): Promise<boolean> {
  if (!job.claim) return false;
  return (await repairOfCertificate(job.claim.certificateNumber)).repairId === job.repair.id;
}

/**
 * What the claim covered runs on; what the customer agreed to pay for beside it, and parts that were not in the unit
 * before, are new lines with a term of their own.
 */
async function nextRevision(
  job: JobRecord,
  claim: NonNullable<JobRecord['claim']>,
  chain: Chain,
  heldNow: HeldInterval,
  o: { today: Day; calendar: WorkingCalendar; transitDays: number },
): Promise<CertificatePlan> {
  const { before, covered, lots, touched } = await readRenewal(job, claim, chain);
  const from = startDay(chain.terms.startEvent, o.today, o.calendar, o.transitDays);
  const added = firstCover(covered, chain.terms, from);
  const { lines } = renewCover({
    lines: before,
    touched,
    added,
    heldBefore: chain.held,
    heldNow,
    terms: chain.terms,
  });
  return {
    ...following(chain, heldNow),
    lines,
    lots: new Map([...lotsOf(chain), ...lots]),
    provedBy: job,
  };
}

/**
 * A unit that goes back as it came keeps its cover. Only a renewed minimum that was still running moves by the days it was
 * here, and only then does the paper say something new.
 */
async function keptRevision(chain: Chain, heldNow: HeldInterval): Promise<CertificatePlan | null> {
  const { lines, hasChanged } = renewCover({
    lines: chain.inForce.lines.map(readCoverLine),
    touched: [],
    heldBefore: chain.held,
    heldNow,
    terms: chain.terms,
  });
  if (!hasChanged) return null;
  return {
    ...following(chain, heldNow),
    lines,
    lots: new Map(lotsOf(chain)),
    provedBy: await lastProved(chain),
  };
}

function following(chain: Chain, heldNow: HeldInterval) {
  return {
    number: chain.inForce.number,
    revision: chain.inForce.revision + 1,
    replaces: { id: chain.inForce.id, revision: chain.inForce.revision },
    policyVersionId: chain.inForce.policyVersionId,
    terms: chain.terms,
    held: [...chain.held, heldNow],
  };
}

/** The newest job of a chain that was repaired; a revision issued for days given back has no readings of its own. */
async function lastProved(chain: Chain): Promise<JobRecord> {
  for (const { jobId } of chain.revisions.toReversed()) {
    const job = await readJob({ id: jobId });
    if (job && isRepaired(job.events)) return job;
  }
  throw new Error('a certificate stands on no repair');
}

function lotsOf(chain: Chain): [string, string][] {
  return chain.inForce.lines.flatMap((line) =>
    line.lotId ? [[line.key, line.lotId] as [string, string]] : [],
  );
}
