/** The language of every page, message and paper (WCAG 2.2, 3.1.1). */
export const LANGUAGE = 'en-GB';

/**
 * The locale that gives the words of a day, a country or a currency: the workshop's own where it is an English one, else the
 * language the sentence round it is written in, so that no part is in a tongue of its own (WCAG 2.2, 3.1.2). Amounts keep the
 * workshop's locale, since figures are read in any language. `locale` is a BCP 47 tag.
 *
 * wordsLocale('en-IE') -> 'en-IE'; wordsLocale('de-DE') -> 'en-GB'
 */
export function wordsLocale(locale: string): string {
  return /^en(?:-|$)/i.test(locale) ? locale : LANGUAGE;
}
