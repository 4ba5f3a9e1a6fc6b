import type { Day } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { isCoveredAtLeastPartly } from '@/lib/warranty/rules/ruling';
import { PROOF_STAGES, WORK_MAY_START } from './stage-sets';
import {
  type JobKind,
  type Move,
  type MoveBy,
  type MoveKey,
  moveOf,
  movesFrom,
  type Need,
  type Stage,
} from './stages';

/** What must be known of a job to say which moves are open. Amounts in minor units. */
export type JobFacts = {
  kind: JobKind;
  stage: Stage;
  isSerialSettled: boolean;
  findings: number;
  hasOpenOffer: boolean;
  hasAgreedPaidOffer: boolean;
  /** the customer has said yes to the price that stands; false for a parcel that came without a booking */
  isPriceAgreed: boolean;
  /** the customer agreed to the terms of a paid job, and has not withdrawn from it; on a claim of which something is covered the certificate is the contract */
  isContractMade: boolean;
  /** null for a repair, or while the claim has no final ruling */
  ruling: 'covered' | 'partly' | 'not-covered' | 'returned-free' | null;
  workEntries: number;
  checksFailed: number;
  checksMissing: number;
  owed: number;
  /** the owner decided to send an unclaimed unit back although something is owed */
  isOwedWaived?: boolean;
  /** fitted parts of lots that were recalled, in words */
  recalledParts?: readonly string[];
  /** a carrier with its reference, or that the customer collects it */
  isHandoverNamed: boolean;
  /** a carrier was given the unit, and did not bring it back */
  isWithCarrier: boolean;
  /** it is recorded as gone: a carrier was given it, or its customer collected it */
  isGone: boolean;
  /** its parcel is looked for */
  isSought: boolean;
  /** opened by staff for a parcel that came without a booking */
  isWalkIn: boolean;
  /** of the unit itself nothing is recorded but that it came: no finding, work, part, wire, reading, price or answer of an inspection */
  isUntouched: boolean;
  /** something was paid on it and not given back, or an invoice was issued */
  hasMoney: boolean;
  /** it left once, so that its papers are issued */
  hasLeft: boolean;
  /** it was proved, and goes back repaired */
  isRepaired: boolean;
  /** last day to withdraw from the contract; null where there is no such right */
  withdrawUntil: Day | null;
  /** the customer asked for the start, or may not withdraw any more */
  isStartAllowed: boolean;
  mayWithdraw: boolean;
  /** the customer said no to a price that is still held, so that the no may become a yes */
  isNoHeld: boolean;
  /** the price the customer was asked about lapsed, and nothing has overtaken it since: an answer may have been told in time */
  hasLapsedPrice: boolean;
  /** the customer has not used the one contest against a ruling other than covered */
  mayContest: boolean;
};

export type MoveAnswer = { allowed: true } | { allowed: false; reasons: readonly MoveReason[] };
export type MoveReason = 'wrong-stage' | 'wrong-person' | 'wrong-kind' | Need;

/** True for a claim whose ruling covers something: that part is repaired whatever the customer says to a price. */
export function isSomethingCovered(facts: Pick<JobFacts, 'kind' | 'ruling'>): boolean {
  return facts.kind === 'claim' && isCoveredAtLeastPartly(facts.ruling);
}

/** True where somebody could take up work that the customer may still withdraw from. */
export function couldBeginEarly(facts: Pick<JobFacts, 'stage' | 'isStartAllowed'>): boolean {
  return !facts.isStartAllowed && WORK_MAY_START.includes(facts.stage);
}

/** True for a claim whose customer has been told no ruling, or contested it and waits for the next one. */
export function isUnruled(facts: Pick<JobFacts, 'kind' | 'ruling'>): boolean {
  return facts.kind === 'claim' && facts.ruling === null;
}

/**
 * How a customer's answer to a changed price moves the job. A no to the rest of a claim never sends back what is covered.
 *
 * answerMove('declined', { kind: 'claim', ruling: 'partly' }) -> 'decline-the-rest'
 */
export function answerMove(
  decision: 'accepted' | 'declined',
  facts: Pick<JobFacts, 'kind' | 'ruling'>,
): Extract<MoveKey, 'approve' | 'decline' | 'decline-the-rest'> {
  if (decision === 'accepted') return 'approve';
  return isSomethingCovered(facts) ? 'decline-the-rest' : 'decline';
}

/**
 * The same of an answer that was told before the price lapsed, and is written down after it. A job that waits for a part waits on:
 * an answer does not bring the part. Only a yes to another repair ends that: the part was for the one it takes the place of.
 *
 * lateAnswerMove('accepted', { kind: 'repair', ruling: null, stage: 'awaiting-parts' }) -> 'approve-late-waiting'
 */
export function lateAnswerMove(
  decision: 'accepted' | 'declined',
  facts: Pick<JobFacts, 'kind' | 'ruling' | 'stage'>,
  { isOtherRepair = false } = {},
): LateAnswerMove {
  const move = answerMove(decision, facts);
  const ends = move === 'decline' || (move === 'approve' && isOtherRepair);
  return facts.stage === 'awaiting-parts' && !ends ? `${move}-late-waiting` : `${move}-late`;
}

type LateAnswerMove = Extract<MoveKey, `${ReturnType<typeof answerMove>}-late${'' | '-waiting'}`>;

/** Whether a unit that is ready stays until it is paid: not where the owner decided to send it back unpaid. */
export function isHeldForMoney({ owed, isOwedWaived }: Pick<JobFacts, 'owed' | 'isOwedWaived'>): boolean {
  return owed > 0 && isOwedWaived !== true;
}

const HOLDS: Record<Need, (facts: JobFacts) => boolean> = {
  'serial-settled': (facts) => facts.isSerialSettled,
  'finding-recorded': (facts) => facts.findings > 0,
  'offer-sent': (facts) => facts.hasOpenOffer,
  'start-allowed': (facts) => facts.isStartAllowed,
  'may-withdraw': (facts) => facts.mayWithdraw,
  ruled: (facts) => !isUnruled(facts),
  'free-or-agreed': (facts) =>
    facts.kind === 'repair' || isCoveredAtLeastPartly(facts.ruling) || facts.hasAgreedPaidOffer,
  'price-agreed': (facts) => facts.isPriceAgreed,
  'ruled-not-covered': (facts) => facts.ruling === 'not-covered' || facts.ruling === 'returned-free',
  'something-covered': isSomethingCovered,
  'nothing-covered': (facts) => !isSomethingCovered(facts),
  'work-recorded': (facts) => facts.workEntries > 0,
  'checks-passed': (facts) => facts.checksFailed === 0 && facts.checksMissing === 0,
  'no-recalled-part': (facts) => (facts.recalledParts ?? []).length === 0,
  'check-failed': (facts) => facts.checksFailed > 0,
  'not-as-it-came': (facts) => facts.stage !== 'ready' || facts.isRepaired,
  'not-repaired': (facts) => !facts.isRepaired,
  'nothing-undone': (facts) => facts.isRepaired || !facts.hasAgreedPaidOffer,
  'nothing-owed': (facts) => !isHeldForMoney(facts),
  'handover-named': (facts) => facts.isHandoverNamed,
  'went-by-carrier': (facts) => facts.isWithCarrier,
  went: (facts) => facts.isGone,
  'was-booked': (facts) => !facts.isWalkIn,
  'nothing-recorded': (facts) => facts.isUntouched,
  'came-unbooked': (facts) => facts.isWalkIn,
  'no-price-agreed': (facts) => !facts.isPriceAgreed,
  'no-money': (facts) => !facts.hasMoney,
  // A part of a recalled lot is taken out wherever the unit is found with it.
  'not-left-before': (facts) => !facts.hasLeft || (facts.recalledParts ?? []).length > 0,
  'not-sought': (facts) => !facts.isSought,
  'may-contest': (facts) => facts.mayContest,
  'not-left': (facts) => !facts.hasLeft,
  'not-done-as-covered': (facts) => facts.ruling !== 'covered' || !facts.isRepaired,
  'no-held': (facts) => facts.isNoHeld,
  'price-lapsed': (facts) => facts.hasLapsedPrice,
};

/**
 * Whether one move is open to one person, with every reason why not.
 * Staff may do what the clock may; the owner may do what staff may.
 *
 * mayMove('dispatch', { …, stage: 'ready', owed: 2500 }, 'staff') -> { allowed: false, reasons: ['nothing-owed'] }
 */
export function mayMove(key: MoveKey, facts: JobFacts, by: MoveBy): MoveAnswer {
  const move = moveOf(key);
  const reasons: MoveReason[] = [];
  if (!move.from.includes(facts.stage)) reasons.push('wrong-stage');
  if (!isOpenTo(move, by)) reasons.push('wrong-person');
  if (move.only !== undefined && move.only !== facts.kind) reasons.push('wrong-kind');
  for (const need of move.needs) if (!HOLDS[need](facts)) reasons.push(need);
  return reasons.length === 0 ? { allowed: true } : { allowed: false, reasons };
}

/** Every move that leaves the job's stage, each with its answer, for one person's screen. */
export function openMoves(facts: JobFacts, by: MoveBy) {
  return movesFrom(facts.stage, facts.kind)
    .filter((move) => isOpenTo(move, by))
    .map((move) => ({ move, answer: mayMove(move.key, facts, by) }));
}

function isOpenTo(move: Move, by: MoveBy): boolean {
  if (move.by.includes(by)) return true;
  return by === 'owner' && move.by.includes('staff');
}

/**
 * Whether a job may go over to the newest version of its repair's check sheet: while it is worked on or proved, never to an older one.
 *
 * mayTakeNewestSheet({ stage: 'proving', version: 1, newest: 2 }) -> { allowed: true }
 */
export function mayTakeNewestSheet(o: {
  stage: Stage;
  version: number;
  newest: number;
}): { allowed: true } | { allowed: false; reason: SheetReason } {
  if (!PROOF_STAGES.includes(o.stage)) return { allowed: false, reason: 'not-on-the-bench' };
  if (o.newest <= o.version) return { allowed: false, reason: 'is-newest' };
  return { allowed: true };
}

export type SheetReason = 'not-on-the-bench' | 'is-newest';

export const SHEET_REASONS: Record<SheetReason, string> = {
  'not-on-the-bench':
    'A job goes over to a newer version of its check sheet while it is on the bench or being proved.',
  'is-newest': 'This job is on the newest version of its check sheet.',
};

/** Why a move is not open, in the words of the job sheet. */
export const REASON_SENTENCES: Record<MoveReason, string> = {
  'wrong-stage': 'The job is not at a stage this can be done from.',
  'wrong-person': 'This is for someone else to do.',
  'wrong-kind': 'This does not apply to this kind of job.',
  'serial-settled': 'The serial read from the unit does not match the booking yet; settle it first.',
  'finding-recorded': 'Record what was found first.',
  'offer-sent': 'Write the price first.',
  'start-allowed': 'The customer may still withdraw from the contract, and did not ask for an earlier start.',
  'may-withdraw': 'There is no right to withdraw from this contract, or not any more.',
  ruled: 'The claim has no final ruling yet: rule on it first.',
  'free-or-agreed':
    'The claim is not ruled covered, and no paid repair was agreed. A ruling that turned out wrong is looked at again by the owner, on the claim’s page.',
  'price-agreed': 'The customer has agreed to no price yet: write one, and ask for approval.',
  'ruled-not-covered': 'The claim is ruled covered, so the unit is repaired before it goes back.',
  'something-covered': 'The claim covers nothing that could be repaired without the rest.',
  'nothing-covered': 'Part of it is covered, and that part is repaired before it goes back.',
  'work-recorded': 'Record the work that was done first.',
  'checks-passed': 'Every check on the sheet must pass first.',
  'no-recalled-part':
    'A part of a recalled lot is fitted. Replace it on the bench and put the old one back into stock first; of one that an earlier job fitted, note on that job that it is out.',
  'check-failed': 'No check on the sheet has failed.',
  'not-as-it-came': 'The unit goes back without a repair.',
  'not-repaired': 'The unit goes back repaired.',
  'nothing-undone':
    'The customer agreed to a paid repair that is not done: do it, or send the unit back unrepaired.',
  'nothing-owed': 'There is still something to pay.',
  'handover-named': 'Give the carrier and its reference, or say that the customer collects it.',
  'went-by-carrier': 'No carrier was given this unit.',
  went: 'This unit is not recorded as gone.',
  'was-booked': 'This job was opened for the unit on the table: there is no booking that waits for another.',
  'nothing-recorded': 'Something is recorded of this unit: take that back first, if it is of another one.',
  'came-unbooked': 'This job was booked by its customer.',
  'no-price-agreed':
    'The customer has said yes to a price on this job: that is a contract, and the unit stays under it.',
  'no-money': 'Money is recorded on this job, or an invoice: settle that first.',
  'not-left-before':
    'The unit left once, and its papers stand. What has to be done to it now is a claim, or a job of its own.',
  'not-sought': 'Its parcel is looked for: say first how that ended.',
  'may-contest': 'There is no ruling that can still be contested.',
  'not-left': 'Its papers are issued, and the claim ended with them.',
  'not-done-as-covered': 'It was repaired as covered, as the customer was told. That stands.',
  'no-held': 'The customer has said no to no price that is still held.',
  'price-lapsed': 'No price lapsed here that an answer could still be written down to.',
};

/**
 * The same sentence, with the day it hangs on where there is one.
 *
 * reasonSentence('start-allowed', { withdrawUntil: 2026-12-15 }, 'en-GB')
 *   -> '… did not ask for an earlier start. Work may start after Tuesday 15 December 2026.'
 */
export function reasonSentence(
  reason: MoveReason,
  facts: Pick<JobFacts, 'withdrawUntil'>,
  locale: string,
): string {
  const sentence = REASON_SENTENCES[reason];
  if (reason !== 'start-allowed' || facts.withdrawUntil === null) return sentence;
  return `${sentence} Work may start after ${formatDay(facts.withdrawUntil, locale, 'weekday')}.`;
}
