import type { TaxCategory } from '@/lib/money/tax';

export type Tax = { category: TaxCategory; rateBps: number };

/** A tax as the value of a choice: S at 20 % is 'S-2000'. */
export function taxKey({ category, rateBps }: Tax): string {
  return `${category}-${rateBps}`;
}

/** A tax in words, with what it is called here: 'VAT 20 %', 'Exempt from VAT'. */
export function taxWords({ category, rateBps }: Tax, taxName: string): string {
  switch (category) {
    case 'S':
      return `${taxName} ${rateBps / 100} %`;
    case 'Z':
      return `${taxName} 0 %, zero rate`;
    case 'E':
      return `Exempt from ${taxName}`;
    case 'O':
      return `Outside ${taxName}`;
  }
}

const EXEMPT: Tax = { category: 'E', rateBps: 0 };

/** The taxes a line may carry: those of the catalogue and of the lines there are, and exempt; each once. */
export function taxChoices(inUse: readonly Tax[], lines: readonly Tax[]): Tax[] {
  const all = [...inUse, ...lines, EXEMPT];
  return all.filter((tax, index) => all.findIndex((other) => taxKey(other) === taxKey(tax)) === index);
}
