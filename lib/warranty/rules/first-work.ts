import type { QuoteLine } from '@/lib/quotes/rules/lines';
import { failedAgain } from './added-cover';
import type { Covered } from './first-cover';

export type FirstFacts = {
  /** The repair the job is under; null on a claim it has nothing to do with, whose customer paid for something else. */
  booked: {
    name: string;
    formerNames: readonly string[];
    symptoms: readonly string[];
    /** names of the repairs it was under when the price was agreed, where it was put under another since */
    before: readonly string[];
    /** names of the one it was under then, where the price names this one too: both were done */
    beside: readonly string[];
  } | null;
  /** Lines the customer agreed to pay for. */
  paid: readonly Pick<QuoteLine, 'kind' | 'description' | 'amount'>[];
  /** What the repairs of the model may be claimed for, by name, the names they had before among them. */
  known: ReadonlyMap<string, readonly string[]>;
  /** Parts fitted, in order, with their lots. */
  uses: readonly { part: string; lotId: string; ownTerm?: string | null }[];
};

/**
 * The work and parts of a first certificate, and the lot of each part by the id of its line: one line of work for each labour
 * line that was paid for, since what stands on no line is not covered.
 *
 * The repair is claimed for its own symptoms, under its name or one it had when the price was agreed. Where the job was put under it
 * since then, the line of the repair before is its work, under the name of what was done; where no line bears any of these names, the
 * words that took their place are. Other work is claimed for what the catalogue says of a repair of that name, words of its own for
 * what it says of the repair before where that was done beside and is not named, or for having failed again. Where no labour was paid for, the repair is the work; without one, whatever else was paid for.
 *
 * Example: booked 'Socket replaced', paid labour 'Socket replaced' and 'Pads rebuilt' give work-1 and work-2.
 */
export function firstWork(o: FirstFacts): { covered: Covered[]; lots: Map<string, string> } {
  const works = worksOf(o).map(
    (work, index): Covered => ({ id: `work-${index + 1}`, kind: 'work', ...work }),
  );
  const symptoms = o.booked?.symptoms ?? works.flatMap((work) => work.symptoms);
  const lots = new Map<string, string>();
  const parts = o.uses.map(({ part, lotId, ownTerm = null }, index): Covered => {
    const id = `part-${index + 1}`;
    lots.set(id, lotId);
    return { id, kind: 'part', description: part, symptoms: [...new Set(symptoms)], ownTerm };
  });
  return { covered: [...works, ...parts], lots };
}

function worksOf({ booked, paid, known }: FirstFacts): Pick<Covered, 'description' | 'symptoms'>[] {
  const costing = paid.filter(({ amount }) => amount > 0);
  const labour = costing.filter(({ kind }) => kind === 'labour');
  if (booked && labour.length === 0) return [{ description: booked.name, symptoms: [...booked.symptoms] }];
  const names = booked ? [[booked.name], booked.formerNames, booked.before, unknownOf(labour, known)] : [];
  const named = names.find((some) => labour.some(({ description }) => some.includes(description))) ?? null;
  const works =
    labour.length > 0 ? labour : costing.filter(({ kind }) => kind === 'part' || kind === 'adjustment');
  const isInOwnWords = booked && !labour.some(({ description }) => booked.beside.includes(description));
  const inOwnWords = isInOwnWords ? booked.beside.flatMap((name) => known.get(name) ?? []) : [];
  return works.map(({ description }) => {
    const own =
      known.get(description) ??
      (inOwnWords.length > 0 ? [...new Set(inOwnWords)] : [failedAgain(description)]);
    const isBooked = booked && (named === null || named.includes(description));
    if (!isBooked) return { description, symptoms: [...own] };
    return {
      description: named === booked.before ? booked.name : description,
      symptoms: [...booked.symptoms],
    };
  });
}

/** Words of lines that name no repair of the model. */
function unknownOf(lines: readonly { description: string }[], known: FirstFacts['known']): string[] {
  return lines.map(({ description }) => description).filter((description) => !known.has(description));
}
