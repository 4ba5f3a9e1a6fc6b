import { addDays, compareDays, type Day, daysBetween } from '@/lib/calendar/day';
import { type EventKind, isEventKind, parseEvent } from '@/lib/jobs/rules/events';
import { heardOn } from '@/lib/jobs/rules/told';

/**
 * Days within which everything that is owed back is given back. After a withdrawal the law sets them (Directive 2011/83/EU
 * Art. 13(1); its British mirror SI 2013/3134 reg. 34, from memory); every other customer is promised the same. They are not rolled
 * past a weekend or a holiday: fourteen days were told, and to give it back sooner is never late.
 */
export const REFUND_DAYS = 14;

/** What may lower the sum a job comes to, or raise what was paid; a cancelled booking is known by its stage. */
export const OWED_BACK_KINDS = [
  'payment-recorded',
  'credit-note-issued',
  'invoice-issued',
  'offer-decided',
  'withdrawn',
  'repair-stopped',
  'claim-ruled',
  'claim-second-look',
] as const satisfies readonly EventKind[];

type Happened = { kind: string; at: Date; toStage: string | null; data: unknown };

/**
 * When the money a job has to give back grew last: what was given back of it since changes nothing. Events come oldest first; null
 * where none of them can have made it.
 *
 * Paid on the 1st, credited on the 3rd, half of it given back on the 5th -> the 3rd.
 */
export function owedBackSince(events: readonly Happened[]): Date | null {
  return events.findLast(mayGrow)?.at ?? null;
}

function mayGrow({ kind, toStage, data }: Happened): boolean {
  if (toStage === 'cancelled') return true;
  if (!isEventKind(kind)) return false;
  const event = parseEvent(kind, data);
  if (event.kind === 'payment-recorded') return event.data.amount > 0 && !event.data.isPostage;
  return OWED_BACK_KINDS.some((known) => known === event.kind);
}

/**
 * When the contract was withdrawn from, where some of `amount` (owed back now, minor units) has been owed since; else null. What was
 * given back counts against the oldest of it, so that a sum paid in error long after is not taken for one the law has a day for.
 * `heardOn` is the day of one that was told before it was written down: the days of the law run from then.
 *
 * Withdrawn from on the 4th with 7200 to give back, all given back on the 8th, 100 paid in error on the 20th -> null.
 */
export function owedSinceWithdrawal(
  events: readonly Happened[],
  amount: number,
): { at: Date; heardOn: Day | null } | null {
  const withdrawn = events.findLast(({ kind }) => kind === 'withdrawn');
  if (!withdrawn) return null;
  const later = events.filter(({ at }) => at > withdrawn.at).reduce((sum, event) => sum + grownBy(event), 0);
  if (amount <= later) return null;
  const event = parseEvent('withdrawn', withdrawn.data);
  const told = event.kind === 'withdrawn' ? event.data.told : undefined;
  return { at: withdrawn.at, heardOn: told ? heardOn(told) : null };
}

/** Minor units that one event adds to what is owed back after a withdrawal. */
function grownBy({ kind, data }: Happened): number {
  if (!isEventKind(kind)) return 0;
  const event = parseEvent(kind, data);
  if (event.kind === 'payment-recorded') return event.data.isPostage ? 0 : Math.max(0, event.data.amount);
  return event.kind === 'credit-note-issued' ? event.data.payable : 0;
}

/** The last day to give money back that is owed since a day: since 1 December, by 15 December. */
export function refundDue(since: Day): Day {
  return addDays(since, REFUND_DAYS);
}

/** Days that money is kept past its last day; 0 on that day. */
export function refundDaysLate(dueOn: Day, today: Day): number {
  return Math.max(0, daysBetween(dueOn, today));
}

type Waiting = { jobNumber: string; amount: number; since: Day; dueOn: Day };

/** What is due next first; then what waits longest, then the greater amount. */
export function byWaiting(a: Waiting, b: Waiting): number {
  if (a.dueOn !== b.dueOn) return compareDays(a.dueOn, b.dueOn);
  return compareDays(a.since, b.since) || b.amount - a.amount || (a.jobNumber < b.jobNumber ? -1 : 1);
}
