import { compareDays, type Day, minDay } from '@/lib/calendar/day';
import { type WorkingCalendar, workingDaysBetween } from '@/lib/calendar/working';
import { may, type Permission, type Role } from '@/lib/people/rules/roles';
import type { Ruling } from '@/lib/warranty/rules/causes';
import type { ClaimStanding } from '@/lib/warranty/rules/claim-standing';
import { isCoveredAtLeastPartly } from '@/lib/warranty/rules/ruling';
import { type AnswerClock, type AnswerDue, answerDue, rulingSince } from './answer-due';
import { BEFORE_READY, UNRULED_STAGES } from './stage-sets';
import type { JobKind, Stage } from './stages';

/** A job that is with us, or whose parcel is asked about, as far as today's list goes. Minutes are bench minutes, `owed` minor units. */
export type TodayJob = {
  number: string;
  kind: JobKind;
  stage: Stage;
  promisedOn: Day | null;
  arrivedOn: Day;
  minutesPlanned: number;
  minutesWorked: number;
  isSerialSettled: boolean;
  owed: number;
  /** last day of an offer that was sent and not answered */
  offerUntil: Day | null;
  /** it waits for parts, and every one of them is in stock */
  isPartHere?: boolean;
  /** unclaimed, and the last notice was not answered */
  isToBeDecided?: boolean;
  /** ready because its carrier brought it back, and its customer has not said where it should go */
  waitsForAddress?: boolean;
  /** sent back so long ago that it would be closed, had its customer not written since */
  isWrittenAbout?: boolean;
  /** `ruling` is the final one, null before it */
  claim: {
    number: string;
    standing: ClaimStanding;
    ruling: Ruling | null;
    contestedOn: Day | null;
    reopenedOn: Day | null;
  } | null;
};

export type OurStep =
  | 'settle-serial'
  | 'start-assessing'
  | 'find-and-decide'
  | 'rule-claim'
  | 'second-look'
  | 'put-on-bench'
  | 'return-or-offer'
  | 'chase-part'
  | 'part-is-here'
  | 'repair'
  | 'prove'
  | 'send-back'
  | 'pack-return'
  | 'offer-ran-out'
  | 'decide-unclaimed'
  | 'hear-of-parcel';
export type CustomerStep = 'answer-price' | 'pay' | 'confirm-address' | 'fetch-or-write';

/** Which kind of work each step is, and so whose it is; `lib/people/rules/roles.ts` says which roles do it. */
const STEP_PERMISSIONS: Record<OurStep | CustomerStep, Permission> = {
  'settle-serial': 'take-in',
  'start-assessing': 'bench',
  'find-and-decide': 'bench',
  'rule-claim': 'rule-claim',
  'second-look': 'second-look',
  'put-on-bench': 'bench',
  'return-or-offer': 'dispatch',
  'chase-part': 'bench',
  'part-is-here': 'bench',
  repair: 'bench',
  prove: 'bench',
  'send-back': 'dispatch',
  'pack-return': 'dispatch',
  'offer-ran-out': 'take-in',
  'decide-unclaimed': 'settings',
  'hear-of-parcel': 'dispatch',
  'answer-price': 'take-in',
  pay: 'money',
  'confirm-address': 'take-in',
  'fetch-or-write': 'take-in',
};

/** Whether a role may take the step that a row waits for: mayTake('front', { who: 'us', step: 'repair' }) -> false. */
export function mayTake(role: Role, wait: Wait): boolean {
  return wait.who !== 'nobody' && may(role, STEP_PERMISSIONS[wait.step]);
}

export type Wait = { who: 'us'; step: OurStep } | { who: 'customer'; step: CustomerStep } | { who: 'nobody' };

/**
 * Who has to do something next, and what.
 *
 * waitOf({ stage: 'ready', owed: 9600, … }, today) -> { who: 'customer', step: 'pay' }; paid, it is ours: 'send-back'.
 */
export function waitOf(job: TodayJob, today: Day): Wait {
  if (waitsForRuling(job)) return us(assessingStep(job));
  switch (job.stage) {
    case 'arrived':
      return us(job.isSerialSettled ? 'start-assessing' : 'settle-serial');
    case 'assessing':
      return us(assessingStep(job));
    case 'awaiting-approval':
      return job.offerUntil !== null && compareDays(job.offerUntil, today) < 0
        ? us('offer-ran-out')
        : { who: 'customer', step: 'answer-price' };
    case 'awaiting-parts':
      return us(job.isPartHere ? 'part-is-here' : 'chase-part');
    case 'on-bench':
      return us('repair');
    case 'proving':
      return us('prove');
    case 'ready':
      if (job.owed > 0) return { who: 'customer', step: 'pay' };
      return job.waitsForAddress ? { who: 'customer', step: 'confirm-address' } : us('send-back');
    case 'declined':
      return us('pack-return');
    case 'unclaimed':
      return job.isToBeDecided ? us('decide-unclaimed') : { who: 'customer', step: 'fetch-or-write' };
    case 'sent-back':
      return job.isWrittenAbout ? us('hear-of-parcel') : { who: 'nobody' };
    default:
      return { who: 'nobody' };
  }
}

function us(step: OurStep): Wait {
  return { who: 'us', step };
}

/** A claim without a ruling that the customer has been told, once it is settled which unit came. */
function waitsForRuling(job: TodayJob): boolean {
  return answerSince(job) !== null && (job.stage !== 'arrived' || job.isSerialSettled);
}

/** The day from which the days promised for a ruling are counted, whatever has to be done before it; null where none is awaited. */
function answerSince({ stage, arrivedOn, claim }: TodayJob): Day | null {
  return claim === null || !UNRULED_STAGES.includes(stage) ? null : rulingSince({ ...claim, arrivedOn });
}

function assessingStep({ claim }: TodayJob): OurStep {
  if (claim === null) return 'find-and-decide';
  if (claim.standing === 'second-look') return 'second-look';
  if (claim.standing !== 'ruled') return 'rule-claim';
  return isCoveredAtLeastPartly(claim.ruling) ? 'put-on-bench' : 'return-or-offer';
}

/** Bench minutes still planned; work that took longer than planned leaves 0, and so does a job that waits elsewhere. */
export function minutesLeft(job: Pick<TodayJob, 'stage' | 'minutesPlanned' | 'minutesWorked'>): number {
  return BEFORE_READY.includes(job.stage) ? Math.max(0, job.minutesPlanned - job.minutesWorked) : 0;
}

/**
 * Working days a job is behind its promise; 0 when it is in time, has no promise or does not wait on us.
 * Example: promised Friday 4 December, still on the bench on Tuesday 8 December, is 2 days late.
 */
export function daysLate(job: TodayJob, today: Day, calendar: WorkingCalendar): number {
  if (job.promisedOn === null || !BEFORE_READY.includes(job.stage)) return 0;
  return Math.max(0, workingDaysBetween(job.promisedOn, today, calendar));
}

/**
 * What is due first comes first, be it a promise or a ruling; then who has been here longest. A job without a promise stands
 * where an answer counted from its arrival would be due: nobody was promised that day, and it is not late after it.
 */
export function inOrder<J extends TodayJob>(jobs: readonly J[], clock: AnswerClock): J[] {
  return jobs
    .map((job) => ({ job, due: dueDay(job, clock) }))
    .sort((a, b) => compareDays(a.due, b.due) || compareDays(a.job.arrivedOn, b.job.arrivedOn))
    .map(({ job }) => job);
}

function dueDay(job: TodayJob, clock: AnswerClock): Day {
  const { promisedOn, arrivedOn } = job;
  const since = answerSince(job);
  if (promisedOn !== null && since === null) return promisedOn;
  const { on } = answerDue(since ?? arrivedOn, clock);
  return promisedOn === null ? on : minDay(on, promisedOn);
}

export type TodayRow<J extends TodayJob> = {
  job: J;
  wait: Wait;
  /** until when the customer was promised a ruling */
  answer: AnswerDue | null;
  /** working days behind the promise */
  promiseLate: number;
  /** the same, or behind that answer where it is further behind */
  daysLate: number;
  minutesLeft: number;
};

export type TodayLists<J extends TodayJob> = {
  late: TodayRow<J>[];
  onUs: TodayRow<J>[];
  onCustomer: TodayRow<J>[];
  /** claims to rule on or to look at again, whether late or not */
  claims: TodayRow<J>[];
};

/** Sorts the jobs that are with us into the lists of today's page; each is in one list. */
export function todayLists<J extends TodayJob>(jobs: readonly J[], clock: AnswerClock): TodayLists<J> {
  const lists: TodayLists<J> = { late: [], onUs: [], onCustomer: [], claims: [] };
  for (const job of inOrder(jobs, clock)) {
    const since = answerSince(job);
    const answer = since && answerDue(since, clock);
    const promiseLate = daysLate(job, clock.today, clock.calendar);
    const row: TodayRow<J> = {
      job,
      wait: waitOf(job, clock.today),
      answer,
      promiseLate,
      daysLate: Math.max(promiseLate, answer?.daysOver ?? 0),
      minutesLeft: minutesLeft(job),
    };
    listFor(row, lists)?.push(row);
  }
  return lists;
}

function listFor<J extends TodayJob>(row: TodayRow<J>, lists: TodayLists<J>): TodayRow<J>[] | null {
  if (row.wait.who === 'nobody') return null;
  if (row.wait.who === 'customer') return lists.onCustomer;
  if (row.wait.step === 'rule-claim' || row.wait.step === 'second-look') return lists.claims;
  return row.daysLate > 0 ? lists.late : lists.onUs;
}

/**
 * The row that somebody of this role begins with, of those whose step they may take: what is furthest behind its promise, a claim or
 * not; otherwise a claim, then the oldest promise.
 */
export function firstOf<J extends TodayJob>(lists: TodayLists<J>, role: Role): TodayRow<J> | null {
  const theirs = (rows: readonly TodayRow<J>[]) => rows.find(({ wait }) => mayTake(role, wait));
  const late = theirs(lists.late);
  const claim = theirs(lists.claims);
  if (late && (!claim || late.daysLate >= claim.daysLate)) return late;
  return claim ?? theirs(lists.onUs) ?? null;
}

/**
 * Which kind of thing to begin with, by the working days each is behind; null where there is none of it. The furthest behind comes
 * first; where two are equally far, a job before a price that was asked for, and that before a message.
 *
 * beginWith({ job: 0, quote: 3, message: null }) -> 'quote'
 */
export function beginWith(behind: Record<Begin, number | null>): Begin | null {
  const here = BEGIN.filter((each) => behind[each] !== null);
  return here.toSorted((a, b) => (behind[b] ?? 0) - (behind[a] ?? 0))[0] ?? null;
}

const BEGIN = ['job', 'quote', 'message'] as const;
export type Begin = (typeof BEGIN)[number];
