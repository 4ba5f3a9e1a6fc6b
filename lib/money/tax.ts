import { roundedShare, safeSum } from './amount';

/** EN 16931 categories in use: S standard or reduced rate, Z zero rate, E exempt, O outside the scope of the tax. */
export type TaxCategory = 'S' | 'Z' | 'E' | 'O';
export type MoneyLine = {
  amount: number;
  category: TaxCategory;
  rateBps: number;
};
export type TaxBreakdown = {
  category: TaxCategory;
  rateBps: number;
  base: number;
  tax: number;
};
export type Totals = {
  net: number;
  tax: number;
  gross: number;
  breakdown: TaxBreakdown[];
};

const WHOLE_BPS = 10_000;
const ORDER: readonly TaxCategory[] = ['S', 'Z', 'E', 'O'];

/**
 * Sums of a set of lines in minor units. `mode` says whether the amounts exclude ('net') or include ('gross') the tax; a discount
 * is a line with a negative amount. Tax is computed on the sum of each category and rate and rounded half up, away
 * from zero, once (EN 16931 BR-CO-17, BR-S-08, BR-S-09), so net + tax = gross always (BR-CO-14, BR-CO-15).
 * With 'gross' the tax inside the sum is rounded and the base is the rest; where a base exists for which BR-CO-17 gives exactly
 * that gross, it is the one found. Refuses fractions, amounts past safe integers, negative rates, and a rate on Z, E or O.
 * Example: one line of 146050 at S 2500, net, gives tax 36513 and gross 182563.
 */
export function totals(lines: readonly MoneyLine[], mode: 'net' | 'gross'): Totals {
  const groups = new Map<string, { category: TaxCategory; rateBps: number; amounts: number[] }>();
  for (const line of lines) {
    refuseRate(line);
    const key = `${line.category}${line.rateBps}`;
    const group = groups.get(key);
    if (group) group.amounts.push(line.amount);
    else
      groups.set(key, {
        category: line.category,
        rateBps: line.rateBps,
        amounts: [line.amount],
      });
  }
  const breakdown = [...groups.values()]
    .map(({ category, rateBps, amounts }) => ({
      category,
      rateBps,
      ...split(safeSum(amounts), rateBps, mode),
    }))
    .sort((a, b) => ORDER.indexOf(a.category) - ORDER.indexOf(b.category) || b.rateBps - a.rateBps);
  const net = safeSum(breakdown.map((part) => part.base));
  const tax = safeSum(breakdown.map((part) => part.tax));
  return { net, tax, gross: safeSum([net, tax]), breakdown };
}

function split(sum: number, rateBps: number, mode: 'net' | 'gross'): { base: number; tax: number } {
  if (mode === 'net') return { base: sum, tax: roundedShare(sum, rateBps, WHOLE_BPS) };
  const tax = roundedShare(sum, rateBps, WHOLE_BPS + rateBps);
  return { base: sum - tax, tax };
}

function refuseRate({ category, rateBps }: MoneyLine): void {
  if (!Number.isSafeInteger(rateBps) || rateBps < 0) throw new RangeError(`Not a tax rate: ${rateBps}`);
  if (category !== 'S' && rateBps !== 0)
    throw new RangeError(`Category ${category} carries no tax, not ${rateBps}`);
}
