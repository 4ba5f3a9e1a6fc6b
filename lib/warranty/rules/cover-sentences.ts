import { formatDay } from '@/lib/calendar/format';
import { describePeriod } from '@/lib/calendar/period';
import type { CoverCount } from './cover';

/** A number of days as a person says it: 1 gives '1 day', 9 gives '9 days'. */
export function inDays(count: number): string {
  return count === 1 ? '1 day' : `${count} days`;
}

/**
 * The count of one cover line in one plain line, without a full stop.
 * Example: '12 months from 3 Dec 2026, plus 9 days while it was out of your hands, ends 12 Dec 2027; a claim can still be opened
 * until Monday 13 December 2027'.
 */
export function explainCount(count: CoverCount, locale: string): string {
  const parts = [`${describePeriod(count.term)} from ${formatDay(count.startsOn, locale, 'short')}`];
  if (count.givenBack > 0) parts.push(`plus ${inDays(count.givenBack)} while it was out of your hands`);
  if (count.isRenewed) parts.push('made longer after a covered claim');
  parts.push(`ends ${formatDay(count.end, locale, 'short')}`);
  const counted = parts.length === 2 ? parts.join(' ') : parts.join(', ');
  if (count.lastClaimDay === count.end) return counted;
  return `${counted}; a claim can still be opened until ${formatDay(count.lastClaimDay, locale, 'weekday')}`;
}
