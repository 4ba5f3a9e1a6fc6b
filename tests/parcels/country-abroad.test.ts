import { expect, test } from 'vitest';
import { countryAbroad } from '@/lib/parcels/rules/country-abroad';

// Names as in the Unicode CLDR, which Intl.DisplayNames reads.
test.each([
  ['at home no country is named', 'GB', 'GB', 'en-GB', null],
  ['abroad it is named', 'IE', 'GB', 'en-GB', 'Ireland'],
  ['in English, however amounts are written', 'GB', 'DE', 'de-DE', 'United Kingdom'],
  ['and left out where none was given', '', 'GB', 'en-GB', null],
])('%s', (_name, country, own, locale, shown) => {
  expect(countryAbroad(country, { country: own, locale })).toBe(shown);
});
