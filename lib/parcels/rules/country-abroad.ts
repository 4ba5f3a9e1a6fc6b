import { wordsLocale } from '@/lib/calendar/language';

/**
 * A country by its name where it is not the workshop's own, as it ends an address; null at home. `country` is an ISO
 * 3166-1 alpha-2 code.
 *
 * countryAbroad('IE', { country: 'GB', locale: 'en-GB' }) -> 'Ireland'
 */
export function countryAbroad(country: string, workshop: { country: string; locale: string }): string | null {
  if (country === '' || country === workshop.country) return null;
  return countryName(country, workshop.locale);
}

/** A country by its English name; the code itself where that knows none. */
export function countryName(country: string, locale: string): string {
  return new Intl.DisplayNames(wordsLocale(locale), { type: 'region' }).of(country) ?? country;
}
