import { readKeptProbes } from './kept-probes';
import { probesLines } from './probes';

export type EntryFacts = {
  isPassed: boolean;
  reading: number | null;
  isOverRange?: boolean;
  choice: string | null;
  probes?: unknown;
};

/**
 * What an entry of a check says, without whether it passed: '4.98 V', '>200 MΩ', 'clean', 'done', '24 pins through, 30 pairs open'; faults of
 * a connector are named after a semicolon.
 */
export function entryText(entry: EntryFacts, unit: string | null): string {
  const probes = readKeptProbes(entry.probes);
  if (probes.length > 0) return probesLines(probes).join('; ');
  const reading = readingText(entry);
  if (reading !== null) return unit ? `${reading} ${unit}` : reading;
  return entry.choice ?? (entry.isPassed ? 'done' : 'not done');
}

/** The number of an entry as a meter shows it, with a > where it read over its range; null where the entry has none. */
export function readingText({
  reading,
  isOverRange,
}: Pick<EntryFacts, 'reading' | 'isOverRange'>): string | null {
  return reading === null ? null : `${isOverRange ? '>' : ''}${reading}`;
}
