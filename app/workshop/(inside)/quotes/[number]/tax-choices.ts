import { type Tax, taxValue } from '@/app/workshop/(inside)/price-lines/taxes';

const EXEMPT: Tax = { category: 'E', rateBps: 0 };

/** The taxes a line may carry: those of the catalogue and of the lines there are, and exempt; each once. */
export function taxChoices(inUse: readonly Tax[], lines: readonly Tax[]): Tax[] {
  const all = [...inUse, ...lines, EXEMPT].map(({ category, rateBps }) => ({ category, rateBps }));
  return all.filter((tax, index) => all.findIndex((other) => taxValue(other) === taxValue(tax)) === index);
}
