import { readKeptProbes } from './kept-probes';
import { probeFaults, probesLine } from './probes';

export type EntryFacts = {
  isPassed: boolean;
  reading: number | null;
  choice: string | null;
  probes?: unknown;
};

/**
 * What an entry of a check says, without whether it passed: '4.98 V', 'clean', 'done', '24 pins through, 30 pairs open'; faults of
 * a connector are named after a semicolon.
 */
export function entryText(entry: EntryFacts, unit: string | null): string {
  const probes = readKeptProbes(entry.probes);
  if (probes.length > 0) return [probesLine(probes), ...probeFaults(probes)].join('; ');
  if (entry.reading !== null) return unit ? `${entry.reading} ${unit}` : String(entry.reading);
  return entry.choice ?? (entry.isPassed ? 'done' : 'not done');
}
