import { type Counted, fisherExact } from '@/lib/statistics/fisher';
import { fewest, LEAST_RETURNS, SOME, STRONG } from './evidence';
import { shareWords } from './share-words';

export type Lesson = {
  before: Counted;
  after: Counted;
  p: number;
  verdict: 'fewer' | 'more' | 'none-yet';
  isStrong: boolean;
  /** the fewest next units, all staying well, that would be some evidence of fewer returns; null within 2,000 */
  allWell: number | null;
};

const FARTHEST = 2000;

/**
 * Did a check added to a sheet help? Units sent back before and after it, both watched for the same time, by Fisher's exact
 * test, two-sided; one look, so nothing is corrected. Says so only from three returns on, at p of at most 0.05.
 * Refuses broken counts. 12 of 80 before and 1 of 90 after: p 0.0007, fewer, strong.
 */
export function beforeAndAfter(o: { before: Counted; after: Counted }): Lesson {
  const { before, after } = o;
  const verdictOf = (now: Counted) => {
    const p = fisherExact(now, before);
    const isTold = p <= SOME && before.returned + now.returned >= LEAST_RETURNS;
    const isFewer = now.returned * before.units < before.returned * now.units;
    return { p, verdict: !isTold ? ('none-yet' as const) : isFewer ? ('fewer' as const) : ('more' as const) };
  };
  const { p, verdict } = verdictOf(after);
  const isFewerAfter = (units: number) =>
    verdictOf({ returned: after.returned, units: after.units + units }).verdict === 'fewer';
  return {
    before,
    after,
    p,
    verdict,
    isStrong: verdict !== 'none-yet' && p <= STRONG,
    allWell: verdict === 'none-yet' ? fewest(FARTHEST, isFewerAfter) : null,
  };
}

/**
 * The same in words: 'Before the check 12 of 80, 8.8% to 24% came back, since then 1 of 90, 0.2% to 6%: strong evidence of
 * fewer returns.' A change after a check need not come from it, and the sentence says no more than before and since.
 */
export function lessonSentence(lesson: Lesson, locale: string): string {
  const { before, after, verdict, isStrong, allWell } = lesson;
  if (before.units === 0)
    return 'Nothing was sent back before the check, so there is nothing to compare with.';
  if (after.units === 0)
    return `Before the check ${shareWords(before, locale)} came back; since then no unit has been watched long enough.`;
  const counts = `Before the check ${shareWords(before, locale)} came back, since then ${shareWords(after, locale)}`;
  if (verdict !== 'none-yet')
    return `${counts}: ${isStrong ? 'strong' : 'some'} evidence of ${verdict} returns.`;
  const next =
    allWell === null
      ? ''
      : ` Were ${allWell === 1 ? 'the next one' : `all of the next ${allWell}`} to stay well, that would be some evidence of fewer.`;
  return `${counts}: no evidence yet that it changed.${next}`;
}
