import { type Day, dayToDate } from './day';
import { LANGUAGE, wordsLocale } from './language';

/**
 * How a day is written: with its weekday where somebody must act by it, relies on it or is promised it; short for what has
 * been, in stamps, tables and counts. There is no third way, so that one page does not write one day in two.
 */
export type DayStyle = 'weekday' | 'short';

// Making an Intl formatter costs about forty times its use (41 against 1 microsecond here), and a list page formats hundreds of days.
const formatters = new Map<string, Intl.DateTimeFormat>();

function formatter(key: string, locale: string, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const known = formatters.get(key);
  if (known) return known;
  const made = new Intl.DateTimeFormat(wordsLocale(locale), options);
  formatters.set(key, made);
  return made;
}

/** A day for reading, in the English of a locale (language.ts): short '3 Dec 2026', weekday 'Thursday 3 December 2026' in en-GB. */
export function formatDay(d: Day, locale: string, style: DayStyle): string {
  // A day is formatted as its midnight UTC in UTC, so that no zone can move it.
  const shown = formatter(`${locale}|${style}`, locale, {
    timeZone: 'UTC',
    day: 'numeric',
    month: style === 'short' ? 'short' : 'long',
    year: 'numeric',
    ...(style === 'weekday' ? { weekday: 'long' } : {}),
  });
  const text = shown.format(dayToDate(d));
  // Some versions of the locale data put a comma after an English weekday, others do not; a certificate must not depend on it.
  return style === 'weekday' && wordsLocale(locale) === LANGUAGE ? text.replace(', ', ' ') : text;
}

/** A month of the form '2026-03' for an axis or a lead, 'Mar 26' in en-GB; in a sentence, where that could be a day, long: 'March 2026'. */
export function formatMonth(month: string, locale: string, style: 'short' | 'long' = 'short'): string {
  const shown = formatter(`${locale}|month|${style}`, locale, {
    timeZone: 'UTC',
    month: style,
    year: style === 'short' ? '2-digit' : 'numeric',
  });
  return shown.format(new Date(`${month}-01T00:00:00Z`));
}

/** A day of one or two figures with its weekday or month, for the axis of a plot: 'Thu 3', '3 Dec' in en-GB. */
export function formatTick(d: Day, locale: string, part: 'weekday' | 'month'): string {
  const shown = formatter(`${locale}|tick ${part}`, locale, {
    timeZone: 'UTC',
    day: 'numeric',
    [part]: 'short',
  });
  return shown.format(dayToDate(d));
}

/** The time of day in the zone, on the 24-hour clock: '14:05'. */
export function formatClock(i: Date, o: { locale: string; zone: string }): string {
  const shown = formatter(`${o.locale}|${o.zone}|clock`, o.locale, {
    timeZone: o.zone,
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  });
  return shown.format(i);
}

/** An instant as a clock in the zone shows it, on the 24-hour clock: '3 Dec 2026, 14:05' in en-GB. */
export function formatInstant(i: Date, o: { locale: string; zone: string }): string {
  const shown = formatter(`${o.locale}|${o.zone}|instant`, o.locale, {
    timeZone: o.zone,
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  });
  return shown.format(i);
}
