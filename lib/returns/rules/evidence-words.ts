import { SHORTEST, SPANS } from './equal-watch';
import type { Comparison, Evidence } from './evidence';
import { AHEAD, LEAST_RETURNS, SOME, STRONG } from './evidence';
import { capital, countWord, percentWords, shareWords } from './share-words';

export const EVIDENCE_WORD: Record<Evidence, string> = {
  strong: 'strong evidence',
  some: 'some evidence',
  'none-yet': 'no evidence yet',
  'too-young': 'too young to compare',
};

/**
 * A comparison in words: what was counted, over how long, what it shows with all looks counted, and what would change that.
 *
 * 'Some evidence that it comes back more often: 3 of 12, 8.9% to 53%; of the rest 10 of 200, 2.7% to 9%. Compared: units
 * watched 90 days, returns within 90 days. Chance alone would show as much on 2.9% of such pages. Four more returns out of
 * the next 20 would be strong evidence.'
 */
export function evidenceSentence(comparison: Comparison, locale: string): string {
  const { ours, rest, days, evidence, adjusted } = comparison;
  if (rest.units === 0)
    return `${capital(shareWords(ours, locale))}; there is nothing else to compare it with.`;
  if (days === null)
    return `Too young to compare: so far ${ours.returned} of ${ours.units}, of the rest ${rest.returned} of ${rest.units}. Fewer than two of three of its units, or too few of the rest, were watched for ${SHORTEST} days.`;
  const counts = `${shareWords(ours, locale)}; of the rest ${shareWords(rest, locale)}`;
  const watch = `Compared: units watched ${days} days, returns within ${days} days.`;
  const parts =
    evidence === 'none-yet'
      ? [`No evidence yet that it comes back more often: ${counts}.`, watch]
      : [
          `${capital(EVIDENCE_WORD[evidence])} that it comes back more often: ${counts}.`,
          watch,
          `Chance alone would show as much on ${chanceWords(adjusted, locale)} of such pages.`,
        ];
  return [...parts, changeSentence(comparison)].filter(Boolean).join(' ');
}

/** What would change the verdict: 'Four more returns out of the next 20 would be strong evidence.' Empty where nothing near would. */
export function changeSentence({ change, ours }: Comparison): string {
  if (!change) return '';
  switch (change.kind) {
    case 'returns': {
      const more = ours.returned === 0 ? '' : ' more';
      const word = change.returns === 1 ? 'return' : 'returns';
      return `${capital(countWord(change.returns))}${more} ${word} out of the next ${change.of} would be ${EVIDENCE_WORD[change.to]}.`;
    }
    case 'not-yet':
      return `Not even ${change.of} returns out of the next ${change.of} would be ${EVIDENCE_WORD[change.to]}.`;
    case 'none-of':
      return change.of === 1
        ? 'Were the next one to stay well, the evidence would no longer be strong.'
        : `Were all of the next ${change.of} to stay well, the evidence would no longer be strong.`;
  }
}

/** The rule behind the flags, for the foot of a page: over how long and how many looks it made, and where evidence begins. */
export function thresholdSentence(looks: number, locale: string): string {
  const span = `Older units had more time to come back, so only equal watches are compared: units that went out so many days ago with cover for as long, and their returns within those days. It is the longest of ${SPANS.slice(0, -1).join(', ')} and ${SPANS.at(-1)} days for which two of three units, and of the rest two thirds as many as the smaller side has, were watched; what came back has no say in it. What was not watched for ${SHORTEST} days is too young to compare.`;
  if (looks === 0) return `${span} Nothing could be compared yet.`;
  return (
    `${span} Each is compared with all the others by Fisher's exact test, with Holm's correction over the ${looks === 1 ? 'one comparison' : `${looks} comparisons`} of this page. ` +
    `From ${countWord(LEAST_RETURNS)} returns on, evidence is called strong where chance alone would show as much on at most ${percentWords(STRONG, locale)} of such pages, and some where on at most ${percentWords(SOME, locale)}. ` +
    `What would change it is worked out for the next ${AHEAD} units watched as long, with the others as they are.`
  );
}

function chanceWords(p: number, locale: string): string {
  return p < 0.001 ? `fewer than ${percentWords(0.001, locale)}` : percentWords(p, locale);
}
