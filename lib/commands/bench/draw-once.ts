import { drawNumber, type NumberKind } from '@/lib/numbers/job-number';
import type { Chance } from './chance';

/** Draws numbers of a kind, none twice. */
export function drawOnce(chance: Chance): (kind: NumberKind) => string {
  const drawn = new Set<string>();
  return (kind) => {
    for (;;) {
      const number = drawNumber(kind, chance.below);
      if (drawn.has(number)) continue;
      drawn.add(number);
      return number;
    }
  };
}
