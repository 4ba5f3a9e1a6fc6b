import { expect, test } from 'vitest';
import { wordsLocale } from '@/lib/calendar/language';

test.each([
  ['the own English of a workshop stays', 'en-IE', 'en-IE'],
  ['so does English of nowhere in particular', 'en', 'en'],
  ['a script in the tag changes nothing', 'en-Latn-ZA', 'en-Latn-ZA'],
  ['German sentences there are none', 'de-DE', 'en-GB'],
  ['another language that begins alike is not English', 'enm', 'en-GB'],
])('%s: %s', (_name, locale, words) => {
  expect(wordsLocale(locale)).toBe(words);
});
