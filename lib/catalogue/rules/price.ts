import { type TaxCategory, totals } from '@/lib/money/tax';

export type Priced = { priceMinor: number; taxCategory: TaxCategory; taxRateBps: number };

/** How an amount of the catalogue is read, in words: priceKind({ currency: 'GBP', pricesIncludeTax: true }) -> 'GBP with tax' */
export function priceKind(workshop: { currency: string; pricesIncludeTax: boolean }): string {
  return `${workshop.currency} ${workshop.pricesIncludeTax ? 'with' : 'without'} tax`;
}

/**
 * A repair's price as a customer reads it, tax included, with the tax in it; minor units.
 * Example: 4800 at 20 %, kept with tax, is { gross: 4800, tax: 800 }; kept without, it is { gross: 5760, tax: 960 }.
 */
export function customerPrice(repair: Priced, pricesIncludeTax: boolean): { gross: number; tax: number } {
  const line = { amount: repair.priceMinor, category: repair.taxCategory, rateBps: repair.taxRateBps };
  const { gross, tax } = totals([line], pricesIncludeTax ? 'gross' : 'net');
  return { gross, tax };
}
