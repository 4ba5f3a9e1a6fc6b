export type Counted = { returned: number; units: number };

// Tables as rare as the one seen count too, and rounding must not part two that are equally rare (R's fisher.test does the same).
const AS_RARE = 1 + 1e-7;

/**
 * Fisher's exact test, two-sided: how often chance alone would part the same returns over two groups of these sizes at least as
 * unevenly. The share of each table is found from its neighbour's and all are divided by their sum, which keeps every digit
 * for large groups too. Refuses broken counts; 1 where either group is empty or nothing came back.
 * fisherExact({ returned: 3, units: 4 }, { returned: 1, units: 4 }) -> 0.486 (the lady tasting tea)
 */
export function fisherExact(ours: Counted, rest: Counted): number {
  requireCounted(ours);
  requireCounted(rest);
  const returned = ours.returned + rest.returned;
  const least = Math.max(0, returned - rest.units);
  const most = Math.min(returned, ours.units);
  // Weights by the logarithm, so that neither end of a large table falls to nought before they are compared.
  const logs: number[] = [0];
  for (let count = least; count < most; count += 1) {
    const up =
      ((returned - count) * (ours.units - count)) / ((count + 1) * (rest.units - returned + count + 1));
    logs.push((logs.at(-1) ?? 0) + Math.log(up));
  }
  const top = logs.reduce((highest, each) => Math.max(highest, each), 0);
  const weights = logs.map((each) => Math.exp(each - top));
  const seen = (weights[ours.returned - least] ?? 0) * AS_RARE;
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  const rare = weights.filter((weight) => weight <= seen).reduce((sum, weight) => sum + weight, 0);
  return Math.min(1, rare / all);
}

function requireCounted({ returned, units }: Counted): void {
  if (!Number.isInteger(returned) || !Number.isInteger(units) || returned < 0 || returned > units)
    throw new RangeError(`Not a count: ${returned} of ${units}`);
}
