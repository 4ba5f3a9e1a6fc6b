import type { Day } from '@/lib/calendar/day';
import type { CoverLine, PolicyTerms } from './terms';

/** What was done or fitted on a job, before the policy has said for how long it is covered. */
export type Covered = { id: string; kind: 'work' | 'part'; description: string; symptoms: string[] };

/**
 * The cover lines of a first certificate: work gets the work term, parts get the parts term, and what the policy does not
 * cover gets no line. Lines keep the order given. Refuses two with the same id.
 * Example: workTerm 'P12M', partsTerm null: a soldered connector gets a line of 12 months, the connector itself none.
 */
export function firstCover(
  covered: readonly Covered[],
  terms: Pick<PolicyTerms, 'workTerm' | 'partsTerm'>,
  startsOn: Day,
): CoverLine[] {
  refuseTwins(covered);
  const lines: CoverLine[] = [];
  for (const { id, kind, description, symptoms } of covered) {
    const term = kind === 'work' ? terms.workTerm : terms.partsTerm;
    if (term !== null)
      lines.push({ id, kind, description, symptoms: [...symptoms], term, startsOn, renewedUntil: null });
  }
  return lines;
}

/** Throws when two lines share an id: a line's id is how a certificate's revisions are compared. */
export function refuseTwins(lines: readonly { id: string }[]): void {
  const seen = new Set<string>();
  for (const { id } of lines) {
    if (seen.has(id)) throw new RangeError(`Two cover lines have the id ${id}`);
    seen.add(id);
  }
}
