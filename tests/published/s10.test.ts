import { describe, expect, test } from 'vitest';
import { countryCodes, isCountryCode } from '@/lib/numbers/countries';
import { checkS10, s10Digit } from '@/lib/numbers/s10';

describe('the check digit of a postal item identifier (UPU S10-12)', () => {
  test.each([
    ['47312482', 9, 'worked example of the standard as published: sum 200'],
    ['12345678', 5, 'jkeen/tracking_number_data couriers/s10.json: sum 204'],
    ['47110815', 1, 'barcode wiki page UPU S10: sum 164'],
    ['00071761', 8, 'README of npm s10: sum 113'],
    ['00071758', 1, 'README of npm s10: sum 153'],
    ['96633102', 0, 'tests of npm s10: remainder 10 becomes 0'],
    ['76129403', 8, 'tests of npm s10: sum 168'],
    ['00000000', 5, 'computed: remainder 11 becomes 5'],
    ['00000015', 5, 'computed: remainder 11 becomes 5'],
    ['99999999', 5, 'computed: remainder 11 becomes 5'],
    ['11111111', 5, 'computed: remainder 11 becomes 5'],
    ['00000008', 0, 'computed: remainder 10 becomes 0'],
    ['00000012', 0, 'computed: remainder 10 becomes 0'],
  ])('%s carries %i (%s)', (serial, digit) => {
    expect(s10Digit(serial)).toBe(digit);
  });

  test.each([
    ['RR473124829GB', 'worked example of the standard as published'],
    ['RB123456785GB', 'jkeen/tracking_number_data'],
    ['RB123456785US', 'jkeen/tracking_number_data'],
    ['RB123456785CV', 'jkeen/tracking_number_data'],
    ['EE471108151FR', 'barcode wiki page UPU S10'],
    ['EB000717618HK', 'README of npm s10'],
  ])('%s is valid (%s)', (text) => {
    expect(checkS10(text)).toEqual({ form: 's10', valid: true });
  });

  // jkeen/tracking_number_data couriers/s10.json
  test('a wrong digit and a wrong country are told apart', () => {
    expect(checkS10('RB123456786US')).toEqual({ form: 's10', valid: false, reason: 'check-digit' });
    expect(checkS10('RB123456785XX')).toEqual({ form: 's10', valid: false, reason: 'country' });
  });
});

describe('country codes (ISO 3166-1)', () => {
  // The number of assigned codes: from memory, equal to npm i18n-iso-countries 7 without its user-assigned XK.
  test('there are 249, each once, in order', () => {
    const codes = countryCodes();
    expect(codes).toHaveLength(249);
    expect(codes).toEqual([...new Set(codes)].sort());
  });

  test('reserved and user-assigned codes are no countries', () => {
    for (const code of ['UK', 'EL', 'XK', 'XX', 'EU', 'gb', '']) expect(isCountryCode(code)).toBe(false);
  });

  // CLDR, in the Intl of the running Node: a code that it cannot name is a slip in our table.
  test('each is known to CLDR by a name of its own', () => {
    const names = new Intl.DisplayNames('en', { type: 'region', fallback: 'none' });
    const named = countryCodes().map((code) => names.of(code));
    expect(named.every((name) => name !== undefined)).toBe(true);
    expect(new Set(named).size).toBe(249);
  });
});
