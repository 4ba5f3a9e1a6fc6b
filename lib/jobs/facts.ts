import { provingState } from '@/lib/bench/rules/checks';
import { checksOf } from '@/lib/bench/rules/job-sheets';
import { readCheck, readEntry } from '@/lib/bench/stored-checks';
import { compareDays, type Day, dayFromDate } from '@/lib/calendar/day';
import { balanceOf } from '@/lib/invoices/rules/balance';
import { Refusal } from '@/lib/outcome';
import { agreedOf, hasAgreedPaidOffer, isAgreedTo, offerOf } from '@/lib/quotes/rules/agreed';
import { lapsedPrice } from '@/lib/quotes/rules/lapsed-price';
import { heldNoOfJob } from '@/lib/quotes/stored-held-no';
import { mayContest } from '@/lib/warranty/rules/ruling';
import { readRuling, toldRuling } from '@/lib/warranty/stored-ruling';
import { type Actor, moveBy } from './actor';
import { type JobRecord, readKind, readStage } from './records';
import { isOwedWaived } from './rules/decision';
import { isSomethingCovered, type JobFacts, mayMove, reasonSentence } from './rules/guards';
import { hasLeft, isHandoverNamed, isWalkIn } from './rules/handover';
import { recalledParts } from './rules/recalled';
import { countsFrom, reopenedAt } from './rules/reopened';
import { isRepaired } from './rules/repaired';
import type { MoveKey } from './rules/stages';

/**
 * The facts the table of stages asks for, from one job's record. Whoever asks for moves gives today; without a day a
 * period to withdraw counts as running, so that nothing is started too early.
 */
export function factsOf(job: JobRecord, today: Day | null = null): JobFacts {
  const agreed = agreedOf(job);
  const isPaidAgreed = hasAgreedPaidOffer(job);
  const since = reopenedAt(job.events);
  const proving = provingState(
    checksOf(job).map(readCheck),
    job.checkEntries.map(readEntry),
    countsFrom(job.events),
  );
  const ruled = job.claim ? readRuling(job.claim) : null;
  const kind = readKind(job.kind);
  const ruling = toldRuling(job.claim);
  return {
    kind,
    stage: readStage(job.stage),
    isSerialSettled: job.isSerialSettled,
    findings: job.findings.length,
    hasOpenOffer: offerOf(job) !== undefined,
    hasAgreedPaidOffer: isPaidAgreed,
    isPriceAgreed: isAgreedTo(agreed),
    isContractMade:
      (job.termsAcceptedAt !== null && job.withdrawnAt === null) || isSomethingCovered({ kind, ruling }),
    ruling,
    workEntries: job.work.filter((entry) => since === null || entry.at >= since).length,
    checksFailed: proving.failed.length,
    checksMissing: proving.missing.length,
    owed: balanceOf(job).owed,
    isOwedWaived: isOwedWaived(job.events),
    // On a claim only a price that was agreed to can be withdrawn from; what is covered waits for nobody.
    ...(kind === 'claim' && !isPaidAgreed ? NO_CONTRACT : withdrawalFacts(job, today)),
    isRepaired: isRepaired(job.events),
    recalledParts: recalledPartsOf(job),
    isNoHeld: today !== null && heldNoOfJob(job, today) !== null,
    hasLapsedPrice: lapsedPrice(job.quotes[0]?.revisions ?? [], job.events) !== null,
    isWithCarrier: job.sentBackAt !== null && job.carrier !== '',
    isGone: job.sentBackAt !== null,
    isSought: job.soughtSince !== null,
    isWalkIn: isWalkIn(job.events),
    isUntouched: isUntouched(job),
    hasMoney: job.invoices.length > 0 || balanceOf(job).paid !== 0,
    hasLeft: hasLeft(job.events),
    isHandoverNamed: isHandoverNamed({ ...job, by: 'carrier' }),
    mayContest:
      ruled?.isFinal === true &&
      job.claim?.state !== 'closed' &&
      mayContest({ ruling: ruled.ruling, timesContested: job.claim?.contestedAt ? 1 : 0 }).allowed,
  };
}

/** Whether nothing is recorded of the unit itself but that it came. */
function isUntouched(job: JobRecord): boolean {
  const { findings, work, jumperWires, partUses, checkEntries, claim } = job;
  const recorded = [findings, work, jumperWires, partUses, checkEntries, claim?.inspection ?? []];
  return recorded.every(({ length }) => length === 0) && offerOf(job) === undefined && !claim?.ruling;
}

/** Fitted parts of lots that were recalled. */
export function recalledPartsOf(job: Pick<JobRecord, 'partUses'>): string[] {
  return recalledParts(
    job.partUses.map(({ lot, takenOutAt }) => ({
      part: lot.part.name,
      lot: lot.code,
      isRecalled: lot.recalls.length > 0 && takenOutAt === null,
    })),
  );
}

const NO_CONTRACT = { withdrawUntil: null, isStartAllowed: true, mayWithdraw: false } as const;

function withdrawalFacts(
  job: JobRecord,
  today: Day | null,
): Pick<JobFacts, 'withdrawUntil' | 'isStartAllowed' | 'mayWithdraw'> {
  const withdrawUntil = job.withdrawUntil && dayFromDate(job.withdrawUntil);
  const isRunning = withdrawUntil !== null && (today === null || compareDays(today, withdrawUntil) <= 0);
  return {
    withdrawUntil,
    isStartAllowed: !isRunning || job.startRequestedAt !== null,
    mayWithdraw: isRunning && job.withdrawnAt === null,
  };
}

/** The job, where it is there and stands as whoever acts on it saw it; `nothing` says what did not happen. */
export function asShown<J extends { version: number }>(
  job: J | null,
  version: number,
  nothing = 'Nothing was recorded.',
): J {
  if (!job) throw new Refusal('not-found', 'There is no such job.');
  if (job.version !== version)
    throw new Refusal('conflict', `This job changed while you had it open. ${nothing}`);
  return job;
}

/** Throws the first reason why a move is not open to someone, today where the workshop is; `said` is what the move itself brings. */
export function requireMove(
  job: JobRecord,
  key: MoveKey,
  actor: Actor,
  on: { today: Day; locale: string } | null = null,
  said: Partial<Pick<JobFacts, 'isHandoverNamed' | 'recalledParts'>> | null = null,
): void {
  const facts = { ...factsOf(job, on?.today), ...said };
  const answer = mayMove(key, facts, moveBy(actor));
  if (answer.allowed) return;
  const [reason] = answer.reasons;
  throw new Refusal(
    reason === 'wrong-stage' ? 'conflict' : reason === 'wrong-person' ? 'not-allowed' : 'invalid',
    reason ? reasonSentence(reason, facts, on?.locale ?? 'en-GB') : 'This cannot be done now.',
  );
}
