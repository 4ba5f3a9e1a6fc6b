import type { CheckDraft } from '@/lib/bench/rules/check-problems';
import type { PolicyTerms } from '@/lib/warranty/rules/terms';

const CHECK_PARTS = ['kind', 'label', 'help', 'unit', 'low', 'high', 'lesson', 'caution'] as const;
const TERM_PARTS = [
  'startEvent',
  'workTerm',
  'partsTerm',
  'renewedMinimum',
  'heldRule',
  'rollLastDay',
  'graceDays',
  'transferable',
] as const;

/** Whether two check sheets ask for the same in the same order, so that no new version is needed. */
export function isSameSheet(a: readonly CheckDraft[], b: readonly CheckDraft[]): boolean {
  return (
    a.length === b.length &&
    a.every((check, i) => {
      const other = b[i];
      return (
        other !== undefined &&
        CHECK_PARTS.every((part) => check[part] === other[part]) &&
        (check.pinTable ?? null) === (other.pinTable ?? null) &&
        isSameList(check.choices, other.choices) &&
        isSameList(check.passing, other.passing)
      );
    })
  );
}

/** Whether two sets of terms promise the same. */
export function isSameTerms(a: PolicyTerms, b: PolicyTerms): boolean {
  return TERM_PARTS.every((part) => a[part] === b[part]) && isSameList(a.exclusions, b.exclusions);
}

type Price = { priceMinor: number; taxCategory: string; taxRateBps: number };

/** Whether two prices cost a customer the same under the same tax, so that the history needs no new row. */
export function isSamePrice(a: Price, b: Price): boolean {
  return a.priceMinor === b.priceMinor && a.taxCategory === b.taxCategory && a.taxRateBps === b.taxRateBps;
}

/** Whether two lists hold the same in the same order. */
export function isSameList(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((item, i) => item === b[i]);
}
