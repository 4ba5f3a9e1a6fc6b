import Holidays from 'date-holidays';
import { Temporal } from 'temporal-polyfill';
import { wordsLocale } from '@/lib/calendar/language';
import { countryCodes } from '@/lib/numbers/countries';

export type Place = { value: string; label: string; group?: string | undefined };

/**
 * Countries of ISO 3166-1 by name; a workshop's own stands first where its customers choose theirs.
 *
 * countryChoices('en-GB', 'GB')[0].label -> 'United Kingdom'
 */
export function countryChoices(locale: string, own?: string): Place[] {
  const words = wordsLocale(locale);
  const names = new Intl.DisplayNames(words, { type: 'region' });
  const all = countryCodes().map((code) => ({ value: code, label: names.of(code) ?? code }));
  const isOwn = ({ value }: Place) => value === own;
  return all.sort((a, b) => Number(isOwn(b)) - Number(isOwn(a)) || a.label.localeCompare(b.label, words));
}

/**
 * Places whose public holidays are known, as 'GB' for a country and 'GB/ENG' for a part of it with holidays of its own.
 * A country with parts is a group of choices.
 */
export function holidayChoices(): Place[] {
  const source = new Holidays();
  return Object.entries(source.getCountries('en')).flatMap(([country, name]) => {
    const parts = Object.entries(source.getStates(country, 'en') ?? {});
    if (parts.length === 0) return [{ value: country, label: name }];
    const whole = { value: country, label: `${name}: holidays of the whole country`, group: name };
    return [
      whole,
      ...parts.map(([part, label]) => ({
        value: `${country}/${part}`,
        label: `${label}, ${name}`,
        group: name,
      })),
    ];
  });
}

/** Whether public holidays are known for a place written as in holidayChoices. */
export function isHolidayPlace(place: string): boolean {
  return holidayChoices().some((choice) => choice.value === place);
}

/** The place of a workshop, as holidayChoices writes it. */
export function holidayPlace(workshop: { holidayCountry: string; holidayRegion: string }): string {
  const { holidayCountry, holidayRegion } = workshop;
  return holidayRegion ? `${holidayCountry}/${holidayRegion}` : holidayCountry;
}

/** IANA zones that this machine can count in. */
export function zoneNames(): string[] {
  return [...Intl.supportedValuesOf('timeZone'), 'UTC'];
}

export function isZone(name: string): boolean {
  // The pattern keeps fixed offsets such as "+02:00" out: they know no summer time.
  if (!/^[A-Za-z]/.test(name)) return false;
  try {
    return Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(name).timeZoneId !== '';
  } catch {
    return false;
  }
}

export function isLocale(tag: string): boolean {
  try {
    return Intl.NumberFormat.supportedLocalesOf(tag).length === 1;
  } catch {
    return false;
  }
}
