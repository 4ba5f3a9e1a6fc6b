import { type Day, daysBetween } from '@/lib/calendar/day';

/** What is said of a job by mistake can be taken back: an arrival, and that its unit left. Each names the event it takes back. */
const UNDOES: Readonly<Record<string, string>> = {
  'arrival-undone': 'unit-arrived',
  'dispatch-undone': 'sent-back',
};

type Happened = { readonly kind: string; readonly toStage?: string | null };

/**
 * A history without what was taken back: the event itself, the stages that followed from it, and the taking back. Whatever else
 * happened meanwhile stays, a message for one. Events in their order.
 *
 * booked, unit-arrived, message-sent, arrival-undone -> booked, message-sent
 */
export function withoutUndone<E extends Happened>(events: readonly E[]): E[] {
  let kept: E[] = [];
  for (const event of events) {
    const undone = UNDOES[event.kind];
    if (undone === undefined) kept.push(event);
    else {
      const from = kept.findLastIndex(({ kind }) => kind === undone);
      kept = kept.filter((each, index) => index < from || (index !== from && !each.toStage));
    }
  }
  return kept;
}

/** Days after which a unit that was recorded as gone stays so: its customer would have asked by then. Common practice, no source. */
export const UNDO_DAYS = 14;

export type GoneFacts = {
  /** the day it was recorded as gone; null where it is not */
  sentBackOn: Day | null;
  today: Day;
  /** its customer opened a claim on its certificate since: they have it */
  isClaimedSince: boolean;
  /** the data of its customer was removed: nobody can be told */
  isErased: boolean;
};

export type UndoReason = 'not-gone' | 'too-long-ago' | 'claimed-since' | 'erased';

/**
 * Whether it can be taken back that a unit left.
 *
 * mayUndoDispatch({ sentBackOn: 2026-12-01, today: 2026-12-15, … }) -> { allowed: true }; on the 16th it is 'too-long-ago'
 */
export function mayUndoDispatch(o: GoneFacts): { allowed: true } | { allowed: false; reason: UndoReason } {
  const reason = whyNot(o);
  return reason === null ? { allowed: true } : { allowed: false, reason };
}

function whyNot({ sentBackOn, today, isClaimedSince, isErased }: GoneFacts): UndoReason | null {
  if (sentBackOn === null) return 'not-gone';
  if (daysBetween(sentBackOn, today) > UNDO_DAYS) return 'too-long-ago';
  if (isClaimedSince) return 'claimed-since';
  return isErased ? 'erased' : null;
}

export const UNDO_REASONS: Record<UndoReason, string> = {
  'not-gone': 'This unit is not recorded as gone.',
  'too-long-ago': `It was recorded as gone more than ${UNDO_DAYS} days ago. Write to the customer instead.`,
  'claimed-since': 'A claim was opened on its certificate since, so the customer has the unit.',
  erased: 'The data of this customer was removed: there is nobody to tell.',
};
