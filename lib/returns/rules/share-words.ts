import type { Counted } from '@/lib/statistics/fisher';
import { type Interval, shareInterval } from '@/lib/statistics/share-interval';

const formatters = new Map<string, Intl.NumberFormat>();

/** A share for reading, with a decimal below a tenth: 0.286 is '29%', 0.0116 '1.2%' in en-GB. */
export function percentWords(share: number, locale: string): string {
  const digits = share > 0 && share < 0.0995 ? 1 : 0;
  const key = `${locale}|${digits}`;
  const known = formatters.get(key);
  if (known) return known.format(share);
  const made = new Intl.NumberFormat(locale, { style: 'percent', maximumFractionDigits: digits });
  formatters.set(key, made);
  return made.format(share);
}

/** An interval of a share for reading: '8.2% to 64%'. */
export function intervalWords({ low, high }: Interval, locale: string): string {
  return `${percentWords(low, locale)} to ${percentWords(high, locale)}`;
}

/**
 * A count of returns for reading, always with the 95 % interval of its share and never with the share alone:
 * '2 of 7, 8.2% to 64%'; 'none sent yet' where there is nothing to count.
 */
export function shareWords({ returned, units }: Counted, locale: string): string {
  const interval = shareInterval(returned, units);
  return interval ? `${returned} of ${units}, ${intervalWords(interval, locale)}` : 'none sent yet';
}

const COUNTS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

/** A small count as a word, a larger one in figures: 2 is 'two', 20 is '20'. */
export function countWord(count: number): string {
  return COUNTS[count] ?? String(count);
}

/** A sentence begins with a capital: 'two more returns' is 'Two more returns'. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
