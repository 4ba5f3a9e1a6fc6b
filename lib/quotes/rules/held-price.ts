import { compareDays, type Day } from '@/lib/calendar/day';

/**
 * Calendar days that a price must hold at least: Directive (EU) 2024/1799 Art. 4 lets the conditions of the repair form
 * stand for 30 calendar days, and the workshop gives every price the same.
 */
export const LEAST_VALID_DAYS = 30;
export const MOST_VALID_DAYS = 365;

/** What is wrong with the days that a price is to hold, as a sentence; null where nothing is. */
export function validDaysProblem(days: number): string | null {
  return days >= LEAST_VALID_DAYS && days <= MOST_VALID_DAYS
    ? null
    : `A price holds for ${LEAST_VALID_DAYS} to ${MOST_VALID_DAYS} days`;
}

/** True through the whole of a price's last day. */
export function isHeld(validUntil: Day, today: Day): boolean {
  return compareDays(today, validUntil) <= 0;
}

/** Whether a price stays as it is while something else is written: agreed to, or sent and to be answered through its last day. */
export function standsMeanwhile(price: { state: string; validUntil: Day } | null, today: Day): boolean {
  if (price === null) return false;
  return price.state === 'accepted' || (price.state === 'sent' && isHeld(price.validUntil, today));
}

export type HeldOffer = { gross: number; validUntil: Day };

/**
 * Whether a new revision may take the place of a price that was sent: always once that one is no longer held; while it
 * is, only at the same price or less, for a change that the customer asked for, or, where the unit is here, for a fault that
 * was found and written down since.
 *
 * mayReplace({ gross: 7450, validUntil: 27 December }, { gross: 8000, customerAsked: false, today: 1 December }) -> false
 */
export function mayReplace(
  held: HeldOffer | null,
  next: { gross: number; customerAsked: boolean; isFaultFound?: boolean | undefined; today: Day },
): boolean {
  if (!held || !isHeld(held.validUntil, next.today)) return true;
  return next.customerAsked || next.isFaultFound === true || next.gross <= held.gross;
}

/** Why a dearer price is refused, to staff; `until` as text. */
export function heldSentence(until: string): string {
  return `The price you sent holds until ${until}, so a new one cannot be higher unless the customer asked for the change, or you record what you have found since.`;
}
