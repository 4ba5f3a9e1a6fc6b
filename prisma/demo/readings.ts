import type { GivenEntry } from '@/lib/bench/rules/checks';
import { pick } from './chance';

type SheetCheck = {
  kind: string;
  label: string;
  low: number | null;
  high: number | null;
  passing: readonly string[];
};

/** A result that passes, as a bench would read it: inside the limits, and not the same on every job. */
export function passingEntry(check: SheetCheck, job: string): GivenEntry {
  const name = `${job}/${check.label}`;
  switch (check.kind) {
    case 'reading':
      return { reading: passingReading(check, name) };
    case 'choice':
      return { choice: check.passing[pick(name, 0, check.passing.length - 1)] ?? null };
    default:
      return { tick: true };
  }
}

function passingReading({ low, high }: SheetCheck, name: string): number {
  const share = pick(name, 15, 75) / 100;
  if (low !== null && high !== null) return rounded(low + (high - low) * share);
  if (high !== null) return rounded(high * share);
  return rounded((low ?? 1) * (1.2 + share * 8));
}

/** Two digits after the first one that counts, as a meter of the workshop shows them. */
function rounded(value: number): number {
  const decimals = Math.abs(value) >= 100 ? 0 : Math.abs(value) >= 10 ? 1 : 2;
  return Number(value.toFixed(decimals));
}
