import { compareDays, type Day, dayFromDate, maxDay, minDay } from '@/lib/calendar/day';
import type { Stage } from '@/lib/jobs/rules/stages';

/** Where a unit waits for its customer: for an answer, or after a no that is taken back. */
export const WAITS_ON_CUSTOMER: readonly Stage[] = ['awaiting-approval', 'declined'];

/** Where one goes that stood ready and is worked on again. */
export const TAKEN_UP_AGAIN: readonly Stage[] = ['on-bench', 'assessing'];

/** The stages whose moves tell of waits: events that enter or leave another say nothing here. */
export const WAIT_STAGES: readonly Stage[] = [...WAITS_ON_CUSTOMER, 'ready'];

export type StageEvent = { at: Date; fromStage: string | null; toStage: string | null };

export type Contract = {
  termsAcceptedAt: Date | null;
  withdrawUntil: Date | null;
  startRequestedAt: Date | null;
};

/** `to` is null while it still waits. */
export type WaitedDays = { from: Day; to: Day | null };

/**
 * The stretches from a unit's arrival that do not count against the bench: in which no work might begin, in which it waited for
 * its customer, and in which it stood ready before it was taken up again. Events come in their order; `dayOf` gives the day of
 * the workshop.
 */
export function waitsOf(
  o: { contract: Contract; events: readonly StageEvent[]; arrivedOn: Day },
  dayOf: (instant: Date) => Day,
): WaitedDays[] {
  return [
    ...waitForStart(o.contract, o.arrivedOn, dayOf),
    ...waitsOnCustomer(o.events, dayOf),
    ...readyBefore(o.events, dayOf),
  ];
}

/** A no or a withdrawal that no yes came after: of the moves to `declined` and from there to the bench, the last led there. */
export function isDeclinedForGood(events: readonly StageEvent[]): boolean {
  const last = events.findLast(
    ({ fromStage, toStage }) =>
      toStage === 'declined' || (fromStage === 'declined' && toStage === 'on-bench'),
  );
  return last?.toStage === 'declined';
}

/**
 * The days from arrival, or from the contract where that came later, in which no work might begin: to the last day to
 * withdraw, or to the day the customer asked for the start. A promise begins after them (lib/jobs/write-arrival.ts).
 */
function waitForStart(
  { termsAcceptedAt, withdrawUntil, startRequestedAt }: Contract,
  arrivedOn: Day,
  dayOf: (instant: Date) => Day,
): WaitedDays[] {
  if (!withdrawUntil) return [];
  const last = dayFromDate(withdrawUntil);
  const from = termsAcceptedAt ? maxDay(arrivedOn, dayOf(termsAcceptedAt)) : arrivedOn;
  const to = startRequestedAt ? minDay(last, dayOf(startRequestedAt)) : last;
  return compareDays(from, to) < 0 ? [{ from, to }] : [];
}

/** Each entry into waiting for the customer, to the move that left it; the last may still be open. */
function waitsOnCustomer(events: readonly StageEvent[], dayOf: (instant: Date) => Day): WaitedDays[] {
  const found: WaitedDays[] = [];
  for (const event of events) {
    const open = found.at(-1);
    if (isAmong(WAITS_ON_CUSTOMER, event.fromStage) && open?.to === null) open.to = dayOf(event.at);
    if (isAmong(WAITS_ON_CUSTOMER, event.toStage)) found.push({ from: dayOf(event.at), to: null });
  }
  return found;
}

/** The stretches in which a unit had stood ready before it was taken up again: it waited to be paid or posted, not for the bench. */
function readyBefore(events: readonly StageEvent[], dayOf: (instant: Date) => Day): WaitedDays[] {
  const found: WaitedDays[] = [];
  let since: Day | null = null;
  for (const event of events) {
    if (event.toStage === 'ready') since ??= dayOf(event.at);
    if (since === null || event.fromStage !== 'ready' || event.toStage === 'unclaimed') continue;
    if (isAmong(TAKEN_UP_AGAIN, event.toStage)) found.push({ from: since, to: dayOf(event.at) });
    since = null;
  }
  return found;
}

const isAmong = (stages: readonly Stage[], stage: string | null) => stages.some((each) => each === stage);
