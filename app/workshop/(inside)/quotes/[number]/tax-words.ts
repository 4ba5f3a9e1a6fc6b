import { type Tax, taxValue } from '@/app/workshop/(inside)/price-lines/taxes';

const EXEMPT: Tax = { category: 'E', rateBps: 0 };

/** The taxes a line may carry: those of the catalogue and of the lines there are, and exempt; each once. */
export function taxChoices(inUse: readonly Tax[], lines: readonly Tax[]): Tax[] {
  const all = [...inUse, ...lines, EXEMPT].map(({ category, rateBps }) => ({ category, rateBps }));
  return all.filter((tax, index) => all.findIndex((other) => taxValue(other) === taxValue(tax)) === index);
}

/** A tax in a sentence, with what it is called here: 'VAT 20 %', 'Exempt from VAT'. */
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
