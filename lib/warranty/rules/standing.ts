import { compareDays, type Day } from '@/lib/calendar/day';
import type { WorkingCalendar } from '@/lib/calendar/working';
import { type CoverCount, countCover } from './cover';
import type { CoverLine, HeldInterval, PolicyTerms } from './terms';

/** Chosen by a customer whose symptom is on no list. */
export const OTHER_SYMPTOM = 'other';

/** Where a line stands on a day: running, claimable only because its last day was rolled, in grace, or ended. */
export type Standing = 'running' | 'rolled' | 'in-grace' | 'ended';

export type LineStanding = { line: CoverLine; count: CoverCount; standing: Standing };

/**
 * Where one line stands for a claim opened on `day`.
 * Example: an end on Saturday 26 December 2026, asked on the 28th in England with rolling, is 'rolled'.
 */
export function lineStanding(
  line: CoverLine,
  day: Day,
  o: { held: readonly HeldInterval[]; terms: PolicyTerms; calendar: WorkingCalendar },
): LineStanding {
  const count = countCover(line, o.held, o.terms, o.calendar);
  return { line, count, standing: standingOn(day, count) };
}

function standingOn(day: Day, count: CoverCount): Standing {
  if (compareDays(day, count.end) <= 0) return 'running';
  if (compareDays(day, count.lastClaimDay) <= 0) return 'rolled';
  return compareDays(day, count.lastGraceDay) <= 0 ? 'in-grace' : 'ended';
}

/**
 * The lines a symptom may belong to. A line without a list of symptoms cannot be ruled out by one, and "other" rules out
 * nothing: whoever cannot name the fault is not told no by a list. Capitals and outer spaces do not matter.
 * Example: 'no charge' belongs to the line whose symptoms are ['No charge', 'loose plug'].
 */
export function relevantLines(lines: readonly CoverLine[], symptom: string): CoverLine[] {
  if (isOther(symptom)) return [...lines];
  const asked = folded(symptom);
  return lines.filter(
    (line) => line.symptoms.length === 0 || line.symptoms.some((known) => folded(known) === asked),
  );
}

/**
 * What somebody with a claim chooses from: what the lines cover, then what else is known of the model, so that a fault of another
 * repair can be named as such; each once, in whatever capitals. "Something else" is not among them.
 *
 * claimSymptoms([{ symptoms: ['No charge'] }], [['no charge', 'Dark display']]) -> ['No charge', 'Dark display']
 */
export function claimSymptoms(
  lines: readonly Pick<CoverLine, 'symptoms'>[],
  ofModel: Iterable<readonly string[]>,
): string[] {
  const kept = new Map<string, string>();
  for (const symptom of [...lines.map(({ symptoms }) => symptoms), ...ofModel].flat()) {
    if (!isOther(symptom) && !kept.has(folded(symptom))) kept.set(folded(symptom), symptom);
  }
  return [...kept.values()];
}

/** True when the customer chose "something else". */
export function isOther(symptom: string): boolean {
  return folded(symptom) === OTHER_SYMPTOM;
}

/** A symptom in words: symptomWords('other') -> 'Something else'; one from a list as it stands there. */
export function symptomWords(symptom: string): string {
  return isOther(symptom) ? 'Something else' : symptom;
}

function folded(symptom: string): string {
  return symptom.trim().toLowerCase();
}
