import { parseEvent } from '@/lib/jobs/rules/events';

/**
 * What posting the unit to the workshop cost the customer, and is paid back where their claim is covered, at least in part (common
 * practice, no source). The customer asks for it with the amount and the receipt; it ends with the payment, or where staff were told
 * that it is not wanted.
 */
export const POSTAGE_STATES = ['asked', 'paid', 'not-wanted'] as const;
export type PostageState = (typeof POSTAGE_STATES)[number];

/** to-ask: the customer may ask for it; not-due: nothing is paid back, or not yet */
export type PostageStanding = PostageState | 'to-ask' | 'not-due';

/**
 * Where the postage of a claim stands. What was asked for under a ruling that was taken back waits for the next one; what was
 * paid stays paid.
 *
 * postageStanding({ state: null, isPaidBack: true }) -> 'to-ask'
 */
export function postageStanding(o: {
  /** as stored; null until somebody asked or ended it */
  state: string | null;
  /** the ruling that stands is final and covers something */
  isPaidBack: boolean;
}): PostageStanding {
  const state = POSTAGE_STATES.find((known) => known === o.state);
  if (state === 'paid') return 'paid';
  if (!o.isPaidBack) return 'not-due';
  return state ?? 'to-ask';
}

/**
 * The state of a claim's postage after an entry of what was paid back, and what of the sum asked for is left, in minor units. It is
 * paid once all of it was; an entry that is corrected leaves it asked for again, or open where nobody had asked.
 *
 * postageAfterPayment({ state: 'asked', asked: 1240, paid: 124 }) -> { state: 'asked', left: 1116 }
 */
export function postageAfterPayment(o: {
  /** as stored before it */
  state: string | null;
  /** minor units; null where nobody asked */
  asked: number | null;
  /** all that was paid back, less what was corrected */
  paid: number;
}): { state: PostageState | null; left: number } {
  const left = Math.max(0, (o.asked ?? 0) - o.paid);
  if (o.paid > 0 && left === 0) return { state: 'paid', left };
  if (o.state === 'not-wanted') return { state: 'not-wanted', left };
  return { state: o.asked === null ? null : 'asked', left };
}

/**
 * What the workshop told whoever had asked for their postage when it ended that unpaid; null where nobody had asked, since a reason
 * is for the customer only then. Events in their order.
 */
export function toldOfEnd(
  events: readonly { kind: string; data: unknown }[],
  { isAsked }: { isAsked: boolean },
): string | null {
  const last = isAsked ? events.findLast(({ kind }) => kind === 'postage-ended') : undefined;
  const event = last && parseEvent('postage-ended', last.data);
  return event?.kind === 'postage-ended' ? event.data.reason : null;
}

/** Why the postage cannot be asked for, in the customer's words; null where it can. */
export function postageProblem(standing: PostageStanding): string | null {
  switch (standing) {
    case 'to-ask':
      return null;
    case 'asked':
      return 'You have asked for your postage already. Write to us under Messages if something of it was wrong.';
    case 'paid':
      return 'Your postage is paid back already. Write to us under Messages if that was not all of it.';
    case 'not-wanted':
      return 'We closed this question with you. Write to us under Messages if you want your postage back after all.';
    case 'not-due':
      return 'Postage is paid back once a claim is ruled covered.';
  }
}
