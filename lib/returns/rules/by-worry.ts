import type { RepairWorth } from './repair-worth';

type Worry = { carries: RepairWorth['carries']; returned: number; units: number };

/** What an owner must do something about comes first: prices that lose money, then those that may. */
const PRESSING: readonly RepairWorth['carries'][] = ['below-cost', 'no', 'in-doubt'];

function press(carries: RepairWorth['carries']): number {
  const at = PRESSING.indexOf(carries);
  return at === -1 ? PRESSING.length : at;
}

/**
 * Repairs in the order in which an owner reads them, and apart those of which there is nothing to read: no unit of theirs came
 * back, and too few were watched to say whether their price carries the warranty. Which price loses money counts before how
 * many units came back, and those before how many were sent; what is equal in all keeps its order.
 */
export function byWorry<T>(repairs: readonly T[], worryOf: (repair: T) => Worry): { told: T[]; quiet: T[] } {
  const told: T[] = [];
  const quiet: T[] = [];
  for (const repair of repairs) (isQuiet(worryOf(repair)) ? quiet : told).push(repair);
  told.sort((a, b) => compare(worryOf(a), worryOf(b)));
  return { told, quiet };
}

function isQuiet({ carries, returned }: Worry): boolean {
  return returned === 0 && (carries === 'too-few' || carries === 'unknown');
}

function compare(a: Worry, b: Worry): number {
  return press(a.carries) - press(b.carries) || b.returned - a.returned || b.units - a.units;
}
