import type { Day } from '@/lib/calendar/day';
import type { WorkingCalendar } from '@/lib/calendar/working';
import { standingNaming } from './renewal-named';
import { isOther, lineStanding, relevantLines } from './standing';
import type { CoverLine, HeldInterval, PolicyTerms } from './terms';

/**
 * The ids of the lines that a covered claim renews: what was done again or replaced, of what still ran when it was opened.
 *
 * Done again is what the symptom belongs to, as far as it could be claimed that day; where none could and a person let the
 * claim in, those in their days of grace, and where there are none of these, what had ended. "Other" names no line: then it is
 * what shares a symptom with a part that was fitted again, or, where none was, the work, since nothing was replaced. A part that
 * was fitted again is renewed whatever it was.
 *
 * Where somebody who did the work has named what was done again, that stands in the place of the symptom, since the customer told
 * it before anybody had looked. A naming of nothing but a part that was fitted again ends when that part is put back.
 *
 * Example: work P30D and part P90D for one symptom, claimed on day 60: only the part is renewed.
 */
export function touchedLines(o: {
  lines: readonly CoverLine[];
  symptom: string;
  openedOn: Day;
  /** a person let a claim in that came after cover had ended */
  isLetIn: boolean;
  /** lines whose part was replaced on the claim's job */
  fittedAgain: readonly string[];
  /** lines named as done again; null where nobody has said */
  named?: readonly string[] | null;
  /** stays before this claim */
  held: readonly HeldInterval[];
  terms: PolicyTerms;
  calendar: WorkingCalendar;
}): string[] {
  const named = standingNaming(o.named ?? null, o.fittedAgain);
  if (named) return inOrder(o.lines, [...named, ...o.fittedAgain]);
  const standings = claimedLines(o).map((line) => lineStanding(line, o.openedOn, o));
  const inTime = standings.filter(({ standing }) => standing === 'running' || standing === 'rolled');
  const inGrace = standings.filter(({ standing }) => standing === 'in-grace');
  const letIn = o.isLetIn ? standings : [];
  const claimed = [inTime, inGrace, letIn].find((each) => each.length > 0) ?? [];
  return [...new Set([...claimed.map(({ line }) => line.id), ...o.fittedAgain])];
}

function inOrder(lines: readonly CoverLine[], ids: readonly string[]): string[] {
  return lines.filter(({ id }) => ids.includes(id)).map(({ id }) => id);
}

function claimedLines(o: {
  lines: readonly CoverLine[];
  symptom: string;
  fittedAgain: readonly string[];
}): CoverLine[] {
  const { lines, symptom, fittedAgain } = o;
  if (!isOther(symptom)) return relevantLines(lines, symptom);
  const replaced = lines.filter(({ id }) => fittedAgain.includes(id));
  if (replaced.length > 0) {
    const theirs = replaced.flatMap(({ symptoms }) => symptoms);
    return lines.filter(
      ({ kind, symptoms }) => kind === 'work' && symptoms.some((each) => theirs.includes(each)),
    );
  }
  const work = lines.filter(({ kind }) => kind === 'work');
  return work.length > 0 ? work : [...lines];
}
