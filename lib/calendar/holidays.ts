import Holidays from "date-holidays";
import { addDays, type Day, day, isDay } from "./day";
import type { WorkingCalendar } from "./working";

// Public holidays come from the npm package date-holidays (code ISC). Its data is licensed
// CC BY-SA / CC BY 3.0 and drawn from Wikipedia and government lists: "date-holidays" by commenthol and contributors,
// https://github.com/commenthol/date-holidays. Keep this attribution with any copy of the dates.

const SATURDAY_AND_SUNDAY = [6, 7] as const;
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
	const closed = new Map<string, string>();
	for (const year of o.years) {
		for (const [d, name] of publicHolidays(o.country, o.region, year))
			closed.set(d, name);
	}
	for (const closing of o.closingDays ?? [])
		closed.set(closing.day, closing.name);
	return { weekend: o.weekend ?? SATURDAY_AND_SUNDAY, closed };
}

function publicHolidays(
	country: string,
	region: string | undefined,
	year: number,
): readonly (readonly [Day, string])[] {
	const key = `${country}|${region ?? ""}|${year}`;
	const seen = yearsSeen.get(key);
	if (seen) return seen;
	const source = region ? new Holidays(country, region) : new Holidays(country);
	const states = source.getStates(country) ?? {};
	if (!source.getCountries()[country])
		throw new RangeError(`No public holidays known for country ${country}`);
	if (region && !states[region])
		throw new RangeError(
			`No public holidays known for region ${country}-${region}`,
		);
	const found: [Day, string][] = [];
	for (const holiday of source.getHolidays(year)) {
		if (holiday.type !== "public") continue;
		for (const d of daysOf(holiday)) found.push([d, holiday.name]);
	}
	yearsSeen.set(key, found);
	return found;
}

function daysOf(holiday: { date: string; start: Date; end: Date }): Day[] {
	const written = holiday.date.slice(0, 10);
	if (!isDay(written)) return [];
	const first = day(written);
	const length = Math.max(
		1,
		Math.round((holiday.end.getTime() - holiday.start.getTime()) / 86_400_000),
	);
	return Array.from({ length }, (_, i) => addDays(first, i));
}
