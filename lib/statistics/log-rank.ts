import jStat from 'jstat';
import { atRiskOn, type RiskCount } from './survival';

export type LogRank = { observed: number; expected: number; variance: number; chiSquare: number; p: number };

/**
 * Do two groups come back at the same pace (log-rank, Mantel 1966)? `observed` and `expected` are returns of the first group;
 * one degree of freedom. Null where nothing can be compared: no return while both were watched.
 * 9 observed where 19.25 were expected, variance 6.257: chi square 16.79, p 0.00004.
 */
export function logRank(first: readonly RiskCount[], second: readonly RiskCount[]): LogRank | null {
  const days = new Set(
    [...first, ...second].filter((count) => count.returned > 0).map((count) => count.days),
  );
  let observed = 0;
  let expected = 0;
  let variance = 0;
  for (const on of days) {
    const ours = atRiskOn(first, on);
    const all = ours + atRiskOn(second, on);
    const mine = returnedOn(first, on);
    const together = mine + returnedOn(second, on);
    observed += mine;
    expected += (together * ours) / all;
    if (all > 1) variance += (together * (ours / all) * (1 - ours / all) * (all - together)) / (all - 1);
  }
  if (variance === 0) return null;
  const chiSquare = (observed - expected) ** 2 / variance;
  return { observed, expected, variance, chiSquare, p: 1 - jStat.chisquare.cdf(chiSquare, 1) };
}

function returnedOn(counts: readonly RiskCount[], on: number): number {
  return counts.filter((count) => count.days === on).reduce((sum, { returned }) => sum + returned, 0);
}
