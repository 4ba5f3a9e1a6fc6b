import Holidays from 'date-holidays';
import { addDays, type Day, day } from './day';
import { DAY_MS } from './spans';
import type { WorkingCalendar } from './working';

// Public holidays come from the npm package date-holidays by commenthol and contributors (code ISC):
// https://github.com/commenthol/date-holidays. Its data is under CC BY-SA 3.0, which wants attribution
// (https://creativecommons.org/licenses/by-sa/3.0/); the sources are named in its LICENSE file and data/countries/*.yaml.

const SATURDAY_AND_SUNDAY = [6, 7] as const;
// Both are computed once: the rules of a country take milliseconds to run, and never change while the program does.
const sources = new Map<string, Holidays>();
const yearsSeen = new Map<string, readonly (readonly [Day, string])[]>();

/**
 * The working calendar of a country (ISO 3166-1 alpha-2) or a region of it, over the given years,
 * with the workshop's own closing days on top: England 2026 closes Monday 2026-12-28 for Boxing Day.
 * Refuses a country or region that the data does not know, since a silent empty calendar would move deadlines.
 */
export function holidayCalendar(o: {
  country: string;
  region?: string | undefined;
  years: readonly number[];
  closingDays?: readonly { day: Day; name: string }[];
  weekend?: readonly number[];
}): WorkingCalendar {
  const key = `${o.country}|${o.region ?? ''}`;
  const source = sourceOf(o.country, o.region, key);
  const closed = new Map<string, string>();
  for (const year of o.years) {
    for (const [d, name] of publicHolidays(source, key, year)) closed.set(d, name);
  }
  for (const closing of o.closingDays ?? []) closed.set(closing.day, closing.name);
  return { weekend: o.weekend ?? SATURDAY_AND_SUNDAY, closed };
}

function publicHolidays(source: Holidays, key: string, year: number): readonly (readonly [Day, string])[] {
  const seen = yearsSeen.get(`${key}|${year}`);
  if (seen) return seen;
  const found = source
    .getHolidays(year)
    .filter((holiday) => holiday.type === 'public')
    .flatMap((holiday) => daysOf(holiday).map((d) => [d, holiday.name] as const));
  yearsSeen.set(`${key}|${year}`, found);
  return found;
}

function sourceOf(country: string, region: string | undefined, key: string): Holidays {
  const seen = sources.get(key);
  if (seen) return seen;
  const source = region ? new Holidays(country, region) : new Holidays(country);
  if (!source.getCountries()[country])
    throw new RangeError(`No public holidays known for country ${country}`);
  if (region && !source.getStates(country)?.[region]) {
    throw new RangeError(`No public holidays known for region ${country}-${region}`);
  }
  sources.set(key, source);
  return source;
}

// A day that is free for some of its hours only stays a working day, as does the eve from which a feast of
// several days is reckoned; two hours of slack keep the 23-hour day of the change to summer time whole.
const SLACK_MS = 2 * 3_600_000;

function daysOf(holiday: { date: string; start: Date; end: Date }): Day[] {
  const first = day(holiday.date.slice(0, 10));
  const lasts = holiday.end.getTime() - holiday.start.getTime();
  const length = Math.floor((lasts + SLACK_MS) / DAY_MS);
  return Array.from({ length }, (_, i) => addDays(first, i));
}
