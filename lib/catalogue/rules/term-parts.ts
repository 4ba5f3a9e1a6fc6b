/** Units a term is counted in, by their letter in ISO 8601. */
export const TERM_UNITS = { D: 'days', W: 'weeks', M: 'months', Y: 'years' } as const;
export type TermUnit = keyof typeof TERM_UNITS;

export const TERM_UNIT_KEYS = ['D', 'W', 'M', 'Y'] as const satisfies readonly TermUnit[];

export const TERM_SENTENCE =
  'Enter a whole number, and choose days, weeks, months or years; 100 years at most.';

/**
 * A stored term as a number and its unit, for a form; months where there is none. A term of several units, which only a file
 * brings, stands as its text.
 *
 * termParts('P12M') -> { count: '12', unit: 'M' }; termParts('P1Y6M') -> { count: 'P1Y6M', unit: 'M' }
 */
export function termParts(term: string | null): { count: string; unit: TermUnit } {
  const match = /^P(\d+)([DWMY])$/.exec(term ?? '');
  const unit = TERM_UNIT_KEYS.find((key) => key === match?.[2]);
  return match?.[1] && unit ? { count: match[1], unit } : { count: term ?? '', unit: 'M' };
}

/**
 * The ISO 8601 term of a number and a unit, null for none. What is no number is handed on as it was typed: text of a file stays
 * a term, and anything else is for the rules to refuse.
 *
 * readTerm('12', 'M') -> 'P12M'; readTerm('', 'D') -> null; readTerm('P1Y6M', 'M') -> 'P1Y6M'
 */
export function readTerm(count: string, unit: TermUnit): string | null {
  if (count === '') return null;
  return /^\d{1,5}$/.test(count) ? `P${Number(count)}${unit}` : count;
}
