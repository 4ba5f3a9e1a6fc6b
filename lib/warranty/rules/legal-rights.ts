/** Whose law the rights sentence follows; every country has one, and an unknown one gets the general sentence. */
export type Regime = 'GB' | 'EU' | 'US' | 'other';

const EU_COUNTRIES: ReadonlySet<string> = new Set(
  'AT BE BG HR CY CZ DK EE FI FR DE GR HU IE IT LV LT LU MT NL PL PT RO SK SI ES SE'.split(' '),
);

/** The sentence 16 CFR 701.3(a)(9) requires, word for word. */
export const US_RIGHTS_SENTENCE =
  'This warranty gives you specific legal rights, and you may also have other rights which vary from State to State.';

/** The regime of an ISO 3166-1 alpha-2 country setting: 'DE' is 'EU', 'GB' is 'GB', 'JP' is 'other'. */
export function regimeOf(country: string): Regime {
  const code = country.trim().toUpperCase();
  if (code === 'GB' || code === 'US') return code;
  return EU_COUNTRIES.has(code) ? 'EU' : 'other';
}

/** What the certificate says about rights by law, as paragraphs. Templates, not legal advice; law changes. */
export function legalRights(country: string): string[] {
  switch (regimeOf(country)) {
    case 'GB':
      // Consumer Rights Act 2015 s.49 (care and skill), s.55 (repeat performance), s.56 (price reduction); s.30 for the form.
      return [
        'You have rights by law, and this certificate does not take any of them away.',
        'A repair must be done with reasonable care and skill (Consumer Rights Act 2015, section 49). If it was not, you can ask us to do it again, at our cost and within a reasonable time (section 55), or you can have the right to a lower price (section 56).',
        'These rights do not end on the day this certificate ends.',
      ];
    case 'EU':
      // Directive (EU) 2019/771 Art. 17(2)(a); written for goods, used here as the pattern for a repair.
      return [
        'You have legal remedies by law, free of charge, against the seller of goods that are not as agreed, and against us if our repair was not done as agreed. This certificate does not affect them.',
        'These rights do not end on the day this certificate ends. How long they last is set by the law of your country.',
      ];
    case 'US':
      return [US_RIGHTS_SENTENCE, 'Those rights do not depend on this warranty and do not end with it.'];
    case 'other':
      return [
        'The law of your country may give you rights about a repair that was not done properly. This certificate does not take any of them away, and they do not end on the day it ends.',
      ];
  }
}

/** One short sentence for a page that has just said that cover has ended, or does not reach this fault. */
export function rightsStillOpen(country: string): string {
  switch (regimeOf(country)) {
    case 'GB':
      return 'Your rights by law stay open. If a repair was not done with reasonable care and skill, you can ask us to do it again (Consumer Rights Act 2015, sections 49 and 55).';
    case 'EU':
      return 'Your rights by law stay open. If a repair was not done as agreed, the law of your country lets you ask us to put it right, free of charge.';
    case 'US':
      return 'Your rights by law stay open. They vary from State to State.';
    case 'other':
      return 'Your rights by law stay open. If you think that our repair was not done properly, tell us.';
  }
}
