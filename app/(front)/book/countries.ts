/** ISO 3166-1 codes offered first: the workshop's own country; the others follow by their name in the page's language. */
const POSTED_TO = [
  'AT',
  'BE',
  'BG',
  'CH',
  'CY',
  'CZ',
  'DE',
  'DK',
  'EE',
  'ES',
  'FI',
  'FR',
  'GB',
  'GR',
  'HR',
  'HU',
  'IE',
  'IS',
  'IT',
  'LT',
  'LU',
  'LV',
  'MT',
  'NL',
  'NO',
  'PL',
  'PT',
  'RO',
  'SE',
  'SI',
  'SK',
  'US',
  'CA',
  'AU',
  'NZ',
  'JP',
] as const;

/** Countries to choose from, the workshop's own first. countryChoices('GB', 'en-GB')[0].label -> 'United Kingdom' */
export function countryChoices(own: string, locale: string): { value: string; label: string }[] {
  const names = new Intl.DisplayNames([locale], { type: 'region' });
  const named = [...new Set<string>([own, ...POSTED_TO])].map((code) => ({
    value: code,
    label: names.of(code) ?? code,
  }));
  const [first, ...others] = named;
  return first ? [first, ...others.sort((a, b) => a.label.localeCompare(b.label, locale))] : [];
}
