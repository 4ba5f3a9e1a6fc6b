import { addDays, compareDays, type Day, daysBetween } from '@/lib/calendar/day';

export type OpenPrice = {
  /** both days in the workshop's zone; the price holds to the end of the last one */
  issuedOn: Day;
  validUntil: Day;
  isReminded: boolean;
};

/**
 * What the clock does to a price that nobody has answered: it lapses on the day after its last one, and so many days
 * before that day the customer is reminded once. A price that held no longer than twice that is not reminded of, since
 * the reminder would come on the heels of the price. 0 days before: no reminder.
 *
 * Valid 1 to 31 December, 5 days before: reminded of from 26 December, lapsed on 1 January.
 */
export function lapseStep(
  price: OpenPrice,
  o: { today: Day; remindDays: number },
): 'lapse' | 'remind' | null {
  if (compareDays(o.today, price.validUntil) > 0) return 'lapse';
  if (price.isReminded || o.remindDays <= 0) return null;
  if (daysBetween(price.issuedOn, price.validUntil) <= 2 * o.remindDays) return null;
  return compareDays(o.today, addDays(price.validUntil, -o.remindDays)) >= 0 ? 'remind' : null;
}
