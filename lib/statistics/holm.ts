/**
 * Holm's correction (Holm 1979): p-values of one page made so large that, taken together, no more than the stated share of
 * pages shows a difference that is not there. The smallest is taken as often as there are looks, the next once less, and none
 * ends below one before it. In the order given; refuses what is no p-value. holm([0.01, 0.04, 0.03]) -> [0.03, 0.06, 0.06]
 */
export function holm(ps: readonly number[]): number[] {
  const adjusted = ps.map(() => 1);
  let highest = 0;
  inOrder(ps).forEach((place, rank) => {
    highest = Math.max(highest, Math.min(1, (ps.length - rank) * (ps[place] ?? 1)));
    adjusted[place] = highest;
  });
  return adjusted;
}

/**
 * What one look's adjusted p would be were its p another and the others as they are: the same as holm() on all of them, without
 * sorting them for each try. holmWith([0.01, 0.04, 0.03])(1, 0.02) -> 0.04
 */
export function holmWith(ps: readonly number[]): (place: number, p: number) => number {
  const order = inOrder(ps);
  return (place, p) => {
    let highest = 0;
    let rank = 0;
    for (const other of order) {
      if (other === place) continue;
      const each = ps[other] ?? 1;
      if (each > p) break;
      highest = Math.max(highest, (ps.length - rank) * each);
      rank += 1;
    }
    return Math.min(1, Math.max(highest, (ps.length - rank) * p));
  };
}

function inOrder(ps: readonly number[]): number[] {
  if (!ps.every((p) => p >= 0 && p <= 1)) throw new RangeError(`Not p-values: ${ps.join(', ')}`);
  return ps.map((_, place) => place).sort((a, b) => (ps[a] ?? 0) - (ps[b] ?? 0));
}
