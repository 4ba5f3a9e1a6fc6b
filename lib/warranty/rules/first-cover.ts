import { compareDays, type Day } from '@/lib/calendar/day';
import { addPeriod } from '@/lib/calendar/period';
import type { CoverLine, PolicyTerms } from './terms';

/** What was done or fitted on a job, before the policy has said for how long it is covered. */
export type Covered = {
  id: string;
  kind: 'work' | 'part';
  description: string;
  symptoms: string[];
  /** the supplier's own term for a part, ISO 8601 */
  ownTerm?: string | null;
};

/**
 * The cover lines of a first certificate: work gets the work term, parts get the parts term, and what the policy does not
 * cover gets no line. A supplier's own term is given on where it ends later. Lines keep the order given. Refuses two with
 * the same id.
 * Example: workTerm 'P12M', partsTerm null: a soldered connector gets a line of 12 months, the connector itself none.
 */
export function firstCover(
  covered: readonly Covered[],
  terms: Pick<PolicyTerms, 'workTerm' | 'partsTerm'>,
  startsOn: Day,
): CoverLine[] {
  refuseTwins(covered);
  const lines: CoverLine[] = [];
  for (const { id, kind, description, symptoms, ownTerm = null } of covered) {
    const ours = kind === 'work' ? terms.workTerm : terms.partsTerm;
    if (ours === null) continue;
    const term = ownTerm === null ? ours : longerTerm(ours, ownTerm, startsOn);
    lines.push({ id, kind, description, symptoms: [...symptoms], term, startsOn, renewedUntil: null });
  }
  return lines;
}

// Months and days compare only from a day on: P90D is longer than P3M or shorter, as the months fall.
function longerTerm(a: string, b: string, from: Day): string {
  return compareDays(addPeriod(from, b), addPeriod(from, a)) > 0 ? b : a;
}

/** Throws when two lines share an id: a line's id is how a certificate's revisions are compared. */
export function refuseTwins(lines: readonly { id: string }[]): void {
  const seen = new Set<string>();
  for (const { id } of lines) {
    if (seen.has(id)) throw new RangeError(`Two cover lines have the id ${id}`);
    seen.add(id);
  }
}
