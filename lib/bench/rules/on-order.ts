import { compareDays, type Day, daysBetween } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';

/** Pieces of a part that were ordered and have not all come; `expectedOn` is null where nobody said when. */
export type OpenOrder = { partId: string; quantity: number; came: number; expectedOn: Day | null };

/** Pieces that are still to come of an order; more may come than were ordered, so never below nothing. */
export function stillToCome({ quantity, came }: Pick<OpenOrder, 'quantity' | 'came'>): number {
  return Math.max(0, quantity - came);
}

/** Pieces on their way by part, over all open orders. */
export function piecesOnOrder(orders: readonly OpenOrder[]): Map<string, number> {
  const pieces = new Map<string, number>();
  for (const order of orders) pieces.set(order.partId, (pieces.get(order.partId) ?? 0) + stillToCome(order));
  return pieces;
}

/**
 * What an order is once pieces of it were booked in: open while some are still to come.
 * Example: 4 of 10 come, and it stays open with 6 to come; 12 come of 10, and it is done.
 */
export function afterComing(
  order: Pick<OpenOrder, 'quantity' | 'came'>,
  pieces: number,
): { came: number; isDone: boolean } {
  const came = order.came + pieces;
  return { came, isDone: came >= order.quantity };
}

/** Days by which something expected is over; 0 in time, on the day itself, and where no day was said. */
export function daysOver(expectedOn: Day | null, today: Day): number {
  return expectedOn === null ? 0 : Math.max(0, daysBetween(expectedOn, today));
}

/** By the day they should come, the first first; those without a day last. */
export function inOrderOfDay<O extends { expectedOn: Day | null }>(orders: readonly O[]): O[] {
  return orders.toSorted((a, b) => {
    if (a.expectedOn === null || b.expectedOn === null)
      return Number(a.expectedOn === null) - Number(b.expectedOn === null);
    return compareDays(a.expectedOn, b.expectedOn);
  });
}

/** 'expected 3 Dec 2026', 'expected 3 Dec 2026, 2 days over', 'no day known'. */
export function expectedWords(expectedOn: Day | null, o: { today: Day; locale: string }): string {
  if (expectedOn === null) return 'no day known';
  const over = daysOver(expectedOn, o.today);
  const late = over === 0 ? '' : `, ${over === 1 ? '1 day' : `${over} days`} over`;
  return `expected ${formatDay(expectedOn, o.locale, 'short')}${late}`;
}

/** From which day to which an order was moved; null where no day was known. */
export type OrderMove = { from: Day | null; to: Day | null };

/** 'from 3 Dec 2026 to 10 Dec 2026', 'from no day to 10 Dec 2026'. */
export function movedWords({ from, to }: OrderMove, locale: string): string {
  const words = (on: Day | null) => (on === null ? 'no day' : formatDay(on, locale, 'short'));
  return `from ${words(from)} to ${words(to)}`;
}
