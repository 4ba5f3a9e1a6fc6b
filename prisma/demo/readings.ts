import type { GivenEntry } from '@/lib/bench/rules/checks';
import { findPinTable } from '@/lib/bench/rules/pin-tables/all';
import { probesOf, readsOf } from '@/lib/bench/rules/probes';
import { pick } from './chance';

type SheetCheck = {
  kind: string;
  label: string;
  low: number | null;
  high: number | null;
  passing: readonly string[];
  pinTable?: string | null | undefined;
};

/** A result that passes, as a bench would read it: inside the limits, and not the same on every job. */
export function passingEntry(check: SheetCheck, job: string): GivenEntry {
  const name = `${job}/${check.label}`;
  switch (check.kind) {
    case 'reading':
      return { reading: passingReading(check, name) };
    case 'choice':
      return { choice: check.passing[pick(name, 0, check.passing.length - 1)] ?? null };
    case 'connector':
      return { probes: soundConnector(check.pinTable ?? '') };
    default:
      return { tick: true };
  }
}

/** Every probe of a connector with the right reading. */
export function soundConnector(key: string): Map<string, string> {
  const table = findPinTable(key);
  if (!table) throw new Error(`no pin table ${key}`);
  return new Map(probesOf(table).map((probe) => [probe.key, readsOf(probe)[0] ?? '']));
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
