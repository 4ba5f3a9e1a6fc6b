import type { TaxCategory } from '@/lib/money/tax';

/**
 * What is wrong with a repair's tax and rate, null for nothing. EN 16931: the standard category has a rate above 0 (BR-S-05), and
 * the others have none (BR-Z-05, BR-E-05, BR-O-05); an invoice that breaks this is written and cannot be handed on as data.
 */
export function taxRateProblem(category: TaxCategory, rateBps: number): string | null {
  if (category === 'S' && rateBps === 0) {
    return 'A standard or reduced rate is above 0. Without tax choose zero rate, exempt, or outside the tax';
  }
  return category !== 'S' && rateBps !== 0 ? 'Only a standard or reduced rate has a rate. Enter 0' : null;
}
