import { addDays, compareDays, type Day, daysBetween } from '@/lib/calendar/day';
import { type EventKind, isEventKind, parseEvent } from '@/lib/jobs/rules/events';

/**
 * Days after a withdrawal within which everything that is owed back has to be given back (Directive 2011/83/EU Art. 13(1); its
 * British mirror SI 2013/3134 reg. 34, from memory). They are not rolled past a weekend or a holiday: the customer was told
 * fourteen days, and to give it back sooner is never late.
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
  if (event.kind === 'payment-recorded') return event.data.amount > 0;
  return OWED_BACK_KINDS.some((known) => known === event.kind);
}

/** The last day to give money back after a withdrawal: withdrawn on 1 December, by 15 December. */
export function refundDue(withdrawnOn: Day): Day {
  return addDays(withdrawnOn, REFUND_DAYS);
}

/** Days that money is kept past its last day; 0 on that day, and where it has none. */
export function refundDaysLate(dueOn: Day | null, today: Day): number {
  return dueOn === null ? 0 : Math.max(0, daysBetween(dueOn, today));
}

type Waiting = { jobNumber: string; amount: number; since: Day; dueOn: Day | null };

/** What has a last day first, the next one foremost; then what waits longest, then the greater amount. */
export function byWaiting(a: Waiting, b: Waiting): number {
  if (a.dueOn === null || b.dueOn === null) {
    if (a.dueOn !== b.dueOn) return a.dueOn === null ? 1 : -1;
  } else if (a.dueOn !== b.dueOn) return compareDays(a.dueOn, b.dueOn);
  return compareDays(a.since, b.since) || b.amount - a.amount || (a.jobNumber < b.jobNumber ? -1 : 1);
}
