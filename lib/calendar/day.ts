/**
 * Calendar days. Glossary:
 * - day: a date in the workshop's zone, written YYYY-MM-DD; it has no hour and is never an instant.
 * - instant: a moment of the world's clock (a Date); it turns into a day only together with a zone.
 * - serial day: whole days since 1970-01-01, the number all day arithmetic is done in.
 * - end of a day: the start of the next one, excluded.
 * - zone: an IANA name such as Europe/London.
 */

import { Temporal } from 'temporal-polyfill';
import { DAY_MS } from './spans';

export type Day = string & { readonly __day: unique symbol };

const FORM = /^(\d{4})-(\d{2})-(\d{2})$/;

/** True for a leap year of the Gregorian calendar: 2024 and 2000 are, 2026 and 1900 are not. */
export function isLeapYear(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

/** Number of days in a month, month 1..12: daysInMonth(2024, 2) is 29. */
export function daysInMonth(year: number, month: number): number {
  if (month === 2) return isLeapYear(year) ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

// Counts from 1 March, so that the leap day is the last of its year: the Gregorian
// calendar of ISO 8601, extended backwards, with no clock and no zone involved.
function serialOf(year: number, month: number, date: number): number {
  const y = month > 2 ? year : year - 1;
  const monthFromMarch = (month + 9) % 12;
  const dayOfYear = Math.floor((153 * monthFromMarch + 2) / 5) + date - 1;
  const leapDays = Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400);
  return y * 365 + leapDays + dayOfYear - 719_468;
}

/** Year, month 1..12 and date 1..31 of a day: parts of 2026-12-03 are 2026, 12 and 3. */
export function partsOf(d: Day): { year: number; month: number; date: number } {
  return {
    year: Number(d.slice(0, 4)),
    month: Number(d.slice(5, 7)),
    date: Number(d.slice(8, 10)),
  };
}

/** The day of a year, month and date; refuses a date that does not exist with a RangeError. */
export function dayOf(year: number, month: number, date: number): Day {
  return day(
    `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(date).padStart(2, '0')}`,
  );
}

/** True for a real date written YYYY-MM-DD, years 0001 to 9999: '2024-02-29' is one, '2025-02-29' is not. */
export function isDay(text: string): text is Day {
  const match = FORM.exec(text);
  if (!match) return false;
  const year = Number(match[1]);
  const month = Number(match[2]);
  const date = Number(match[3]);
  return year >= 1 && month >= 1 && month <= 12 && date >= 1 && date <= daysInMonth(year, month);
}

/** Reads YYYY-MM-DD as a day; throws a RangeError on anything that is no real date. */
export function day(text: string): Day {
  if (!isDay(text)) throw new RangeError(`Not a calendar day: ${JSON.stringify(text)}`);
  return text;
}

/** Whole days from 1970-01-01 to the day: 1970-01-02 is 1. */
export function serialDay(d: Day): number {
  const { year, month, date } = partsOf(d);
  return serialOf(year, month, date);
}

/** The day of a serial number; refuses fractions and days outside years 0001 to 9999. */
export function dayFromSerial(serial: number): Day {
  if (!Number.isInteger(serial)) throw new RangeError(`Not a number of whole days: ${serial}`);
  // Outside the years of four digits toISOString puts a sign in front or throws, and neither passes for a day.
  return day(new Date(serial * DAY_MS).toISOString().slice(0, 10));
}

/** The day n whole days later (earlier when negative): addDays(2026-02-28, 1) is 2026-03-01. */
export function addDays(d: Day, n: number): Day {
  return dayFromSerial(serialDay(d) + n);
}

/** Days from the first to the second, negative when it lies earlier: 2026-12-01 to 2026-12-31 is 30. */
export function daysBetween(from: Day, to: Day): number {
  return serialDay(to) - serialDay(from);
}

/** Below zero when a is earlier than b, above when later, zero when equal. */
export function compareDays(a: Day, b: Day): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}

/** The latest of the given days. */
export function maxDay(...days: [Day, ...Day[]]): Day {
  return days.reduce((latest, d) => (compareDays(d, latest) > 0 ? d : latest));
}

/** The earliest of the given days. */
export function minDay(...days: [Day, ...Day[]]): Day {
  return days.reduce((earliest, d) => (compareDays(d, earliest) < 0 ? d : earliest));
}

/** ISO weekday of a day, Monday 1 to Sunday 7: 2026-12-03 is 4. */
export function isoWeekday(d: Day): number {
  return ((((serialDay(d) + 3) % 7) + 7) % 7) + 1;
}

/** The day that a wall calendar in the zone shows at an instant; refuses an unknown zone. */
export function dayInZone(instant: Date, zone: string): Day {
  const zoned = Temporal.Instant.fromEpochMilliseconds(instant.getTime()).toZonedDateTimeISO(zone);
  return dayOf(zoned.year, zoned.month, zoned.day);
}

/**
 * The first instant of a day in a zone: midnight, or the first moment after it where
 * the clock skips midnight. The end of a day is the start of the next.
 */
export function startOfDay(d: Day, zone: string): Date {
  const zoned = Temporal.PlainDate.from(d).toZonedDateTime(zone);
  return new Date(zoned.epochMilliseconds);
}

/** The day kept in a date column, which arrives as midnight UTC; refuses any other time of day. */
export function dayFromDate(stored: Date): Day {
  const ms = stored.getTime();
  if (!(ms % DAY_MS === 0)) throw new RangeError('A stored day is midnight UTC; this is an instant');
  return dayFromSerial(ms / DAY_MS);
}

/** The midnight UTC under which a date column keeps a day. */
export function dayToDate(d: Day): Date {
  return new Date(serialDay(d) * DAY_MS);
}
