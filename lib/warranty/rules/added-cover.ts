import type { QuoteLine } from '@/lib/quotes/rules/lines';
import type { Covered } from './first-cover';
import type { CoverLine } from './terms';

export type AddedFacts = {
  /** Lines of the revision in force. */
  before: readonly (Pick<CoverLine, 'id' | 'kind' | 'description'> & {
    /** which part of the parts list it is; absent where no lot says so */
    partId?: string | undefined;
  })[];
  /** Parts fitted on the claim's job, in order, with their lots. */
  uses: readonly { part: string; partId?: string; lotId: string; ownTerm?: string | null }[];
  /** Lines the customer agreed to pay for beside the covered part. */
  paid: readonly Pick<QuoteLine, 'kind' | 'description' | 'amount'>[];
  /** What the job's own repair may be claimed for. */
  repairSymptoms: readonly string[];
  /** The same for the other repairs of the model, by name, those they had before among them. */
  known: ReadonlyMap<string, readonly string[]>;
};

/**
 * What a claim's job adds to the certificate, and the lot of every part it fitted by the id of its line.
 *
 * A part that the certificate does not know yet, or that was paid for, is a new line; one that it knows keeps its line, which
 * is among those fitted again and comes from its new lot.
 * Each labour line that was paid for is a new line of work. It may be claimed for what the catalogue says of a repair of
 * that name; where there is none, and for a part that was paid for, for having failed again, so that it never answers for
 * the faults of another line.
 * Ids go on from the highest number there was, because a line keeps its id through every revision.
 *
 * Example: before [work-1, part-1], a paid labour line 'Fader replaced' gives { id: 'work-2', kind: 'work', … }.
 */
export function addedCover(o: AddedFacts): {
  covered: Covered[];
  lots: Map<string, string>;
  fittedAgain: string[];
} {
  const covered: Covered[] = [];
  const fittedAgain: string[] = [];
  const lots = new Map<string, string>();
  let number = Math.max(0, ...o.before.map(({ id }) => Number(/\d+$/.exec(id)?.[0] ?? 0)));
  for (const { part, partId, lotId, ownTerm = null } of o.uses) {
    const isPaid = o.paid.some((line) => line.kind === 'part' && line.description === part);
    // By its row, since a part may have been renamed meanwhile; by its name where the line has no lot.
    const known = o.before.filter(
      (line) =>
        line.kind === 'part' && (line.partId && partId ? line.partId === partId : line.description === part),
    );
    if (known.length > 0 && !isPaid) {
      for (const line of known) lots.set(line.id, lotId);
      fittedAgain.push(...known.map(({ id }) => id));
      continue;
    }
    number += 1;
    const id = `part-${number}`;
    lots.set(id, lotId);
    const symptoms = isPaid ? [failedAgain(part)] : [...o.repairSymptoms];
    covered.push({ id, kind: 'part', description: part, symptoms, ownTerm });
  }
  for (const { kind, description, amount } of o.paid) {
    if (kind !== 'labour' || amount <= 0) continue;
    number += 1;
    const symptoms = o.known.get(description) ?? [failedAgain(description)];
    covered.push({ id: `work-${number}`, kind: 'work', description, symptoms: [...symptoms] });
  }
  return { covered, lots, fittedAgain };
}

/** What may be said of work or a part that no repair of the catalogue stands for. */
export function failedAgain(what: string): string {
  return `Has failed again: ${what}`;
}
