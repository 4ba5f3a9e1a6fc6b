import { addDays, type Day, dayOf, daysInMonth, partsOf } from './day';

const FORM = /^P(?:(\d{1,5})Y)?(?:(\d{1,5})M)?(?:(\d{1,5})W)?(?:(\d{1,6})D)?$/;

type Parts = { years: number; months: number; weeks: number; days: number };

function read(text: string): Parts | null {
  const match = FORM.exec(text);
  if (!match) return null;
  const parts = {
    years: Number(match[1] ?? 0),
    months: Number(match[2] ?? 0),
    weeks: Number(match[3] ?? 0),
    days: Number(match[4] ?? 0),
  };
  return parts.years + parts.months + parts.weeks + parts.days > 0 ? parts : null;
}

function parse(text: string): Parts {
  const parts = read(text);
  if (!parts) throw new RangeError(`Not a period in days, weeks, months or years: ${JSON.stringify(text)}`);
  return parts;
}

/** True for an ISO 8601 duration of whole years, months, weeks and days, longer than nothing: 'P12M', not 'PT5H' or 'P0D'. */
export function isPeriod(text: string): boolean {
  return read(text) !== null;
}

/**
 * True where a period is no longer than so many years, a year of days counted as 366 of them. Refuses what is no period.
 * Example: 'P1200M' is within 100 years, 'P101Y' and 'P99999W' are not.
 */
export function isWithinYears(period: string, most: number): boolean {
  const { years, months, weeks, days } = parse(period);
  return years + months / 12 + (weeks * 7 + days) / 366 <= most;
}

/**
 * The last day of a period that starts with an event on `start`.
 *
 * The day of the event is not counted, so ninety days from 2025-12-01 end on 2026-03-01. Months and
 * years end on the same date of the last month, or on its last day where that date does not exist;
 * years and months come first, weeks and days after (Regulation (EEC, Euratom) 1182/71 Art. 3(1) and
 * 3(2)(c); BGB 187(1), 188(2)-(3); Dodds v Walker [1981] 1 WLR 1027). Weekends and holidays do not move it.
 * Always count from the original start: two results chained are not the same as one longer period.
 * Refuses what is no period with a RangeError. Example: addPeriod(2025-08-31, 'P6M') is 2026-02-28.
 */
export function addPeriod(start: Day, period: string): Day {
  const { years, months, weeks, days } = parse(period);
  const from = partsOf(start);
  const monthCount = from.year * 12 + (from.month - 1) + years * 12 + months;
  const year = Math.floor(monthCount / 12);
  const month = (monthCount % 12) + 1;
  const corresponding = dayOf(year, month, Math.min(from.date, daysInMonth(year, month)));
  return addDays(corresponding, weeks * 7 + days);
}

/** A period in words: 'P12M' is '12 months', 'P1Y6M' is '1 year and 6 months'. Refuses what is no period. */
export function describePeriod(period: string): string {
  const { years, months, weeks, days } = parse(period);
  const named = [
    counted(years, 'year'),
    counted(months, 'month'),
    counted(weeks, 'week'),
    counted(days, 'day'),
  ];
  const words = named.filter((part) => part !== '');
  const last = words.pop() ?? '';
  return words.length === 0 ? last : `${words.join(', ')} and ${last}`;
}

function counted(n: number, unit: string): string {
  if (n === 0) return '';
  return `${n} ${unit}${n === 1 ? '' : 's'}`;
}
