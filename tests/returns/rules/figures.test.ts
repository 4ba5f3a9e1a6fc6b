import { describe, expect, test } from 'vitest';
import { type Comparison, compareAll } from '@/lib/returns/rules/evidence';
import { changeSentence, evidenceSentence, thresholdSentence } from '@/lib/returns/rules/evidence-words';
import { beforeAndAfter, lessonSentence } from '@/lib/returns/rules/lesson';
import { intervalWords, percentWords, shareWords } from '@/lib/returns/rules/share-words';
import { wearOf, wearSentence } from '@/lib/returns/rules/wear';
import { fisherExact } from '@/lib/statistics/fisher';

const counted = (returned: number, units: number) => ({ returned, units });
const REST = counted(10, 200);

function alone(returned: number, units: number, rest = REST): Comparison {
  const [comparison] = compareAll([{ key: 'lot', days: 90, ours: counted(returned, units), rest }]);
  if (!comparison) throw new Error('no comparison');
  return comparison;
}

describe('shares in words', () => {
  test('come with their interval, never alone', () => {
    expect(shareWords(counted(2, 7), 'en-GB')).toBe('2 of 7, 8.2% to 64%');
    expect(shareWords(counted(0, 0), 'en-GB')).toBe('none sent yet');
    expect(intervalWords({ low: 0, high: 1 }, 'en-GB')).toBe('0% to 100%');
  });

  test.each([
    [0.0116, '1.2%'],
    [0.0994, '9.9%'],
    [0.0996, '10%'],
    [0.286, '29%'],
  ])('%d is %s', (share, words) => {
    expect(percentWords(share, 'en-GB')).toBe(words);
  });
});

describe('evidence that a lot comes back more often', () => {
  test.each([
    ['half of twelve', 6, 12, 'strong'],
    ['three of twelve', 3, 12, 'some'],
    ['two of four, which is rarer but fewer than three', 2, 4, 'none-yet'],
    ['none of three hundred, which is better', 0, 300, 'none-yet'],
    ['as many as the rest', 3, 60, 'none-yet'],
  ])('%s', (_, returned, units, evidence) => {
    expect(alone(returned, units).evidence).toBe(evidence);
  });

  test('is the less the more a page looks at: three of twelve is no longer some among six', () => {
    const others = [0, 1, 0, 1, 0].map((returned, place) => ({
      key: `lot-${place}`,
      days: 90,
      ours: counted(returned, 20),
      rest: REST,
    }));
    const [first] = compareAll([{ key: 'lot', days: 90, ours: counted(3, 12), rest: REST }, ...others]);
    expect(first?.p).toBe(alone(3, 12).p);
    // Holm's first step by hand: the smallest p, six looks.
    expect(first?.adjusted).toBeCloseTo(6 * fisherExact(counted(3, 12), REST), 12);
    expect(first?.evidence).toBe('none-yet');
  });

  // What is said of the next twenty is tried out: the count it names changes the verdict, one fewer does not.
  test.each([
    [3, 12],
    [1, 12],
    [0, 3],
    [2, 4],
    [40, 600],
  ])(
    '%d of %d: the returns it names among the next twenty are the fewest that would do',
    (returned, units) => {
      const { change, evidence } = alone(returned, units);
      if (change?.kind !== 'returns') throw new Error('no returns named');
      expect(change.to).toBe(evidence === 'some' ? 'strong' : 'some');
      const rank = { 'too-young': 0, 'none-yet': 0, some: 1, strong: 2 };
      const then = (more: number) => rank[alone(returned + more, units + 20).evidence];
      expect(then(change.returns)).toBeGreaterThanOrEqual(rank[change.to]);
      expect(then(change.returns - 1)).toBeLessThan(rank[change.to]);
    },
  );

  test('is not told of what is too young, which takes nothing from the other looks', () => {
    const young = { key: 'young', days: null, ours: counted(5, 6), rest: REST };
    const [first, second] = compareAll([young, { key: 'lot', days: 90, ours: counted(3, 12), rest: REST }]);
    expect(first).toMatchObject({ evidence: 'too-young', change: null });
    expect(second?.adjusted).toBe(alone(3, 12).adjusted);
    expect(first && evidenceSentence(first, 'en-GB')).toBe(
      'Too young to compare: so far 5 of 6, of the rest 10 of 200. Fewer than two of three of its units, or too few of the rest, were watched for 14 days.',
    );
  });

  test('once strong, says how many would have to stay well, and one fewer would not do', () => {
    const { change } = alone(6, 12);
    if (change?.kind !== 'none-of') throw new Error('no units named');
    expect(alone(6, 12 + change.of).evidence).not.toBe('strong');
    expect(alone(6, 12 + change.of - 1).evidence).toBe('strong');
  });

  test('reads as a sentence', () => {
    const [nothingElse] = compareAll([{ key: 'lot', days: null, ours: counted(0, 3), rest: counted(0, 0) }]);
    if (!nothingElse) throw new Error('no comparison');
    expect(nothingElse.evidence).toBe('none-yet');
    expect(evidenceSentence(alone(3, 12), 'en-GB')).toBe(
      'Some evidence that it comes back more often: 3 of 12, 8.9% to 53%; of the rest 10 of 200, 2.7% to 9%. Compared: units watched 90 days, returns within 90 days. Chance alone would show as much on 2.9% of such pages. Four more returns out of the next 20 would be strong evidence.',
    );
    expect(evidenceSentence(nothingElse, 'en-GB')).toBe(
      '0 of 3, 0% to 56%; there is nothing else to compare it with.',
    );
    expect(changeSentence(alone(6, 12))).toBe(
      'Were all of the next 19 to stay well, the evidence would no longer be strong.',
    );
    expect(changeSentence(alone(0, 2, counted(2, 2)))).toBe(
      'Not even 20 returns out of the next 20 would be some evidence.',
    );
    const rule = thresholdSentence(6, 'en-GB');
    expect(rule).toContain("Holm's correction over the 6 comparisons");
    expect(rule).toContain('the longest of 14, 30, 60, 90, 120, 150, 180, 270 and 360 days');
    expect(thresholdSentence(0, 'en-GB')).toMatch(/Nothing could be compared yet\.$/);
  });
});

describe('before and after a lesson', () => {
  test('tells fewer returns where the counts show it', () => {
    const lesson = beforeAndAfter({ before: counted(12, 80), after: counted(1, 90) });
    expect(lesson).toMatchObject({ verdict: 'fewer', isStrong: true, allWell: null });
    expect(lessonSentence(lesson, 'en-GB')).toBe(
      'Before the check 12 of 80, 8.8% to 24% came back, since then 1 of 90, 0.2% to 6%: strong evidence of fewer returns.',
    );
  });

  // Fisher's exact test by hand: 2 of 2 and 0 of 40 come so by chance once in 861 (42 over 2), and yet are two returns.
  test('tells nothing from two returns, however rare, and something from three', () => {
    const two = beforeAndAfter({ before: counted(2, 2), after: counted(0, 40) });
    expect(two.p).toBeCloseTo(1 / 861, 10);
    expect(two.verdict).toBe('none-yet');
    expect(beforeAndAfter({ before: counted(3, 3), after: counted(0, 40) }).verdict).toBe('fewer');
  });

  test('calls evidence some where it is not strong', () => {
    const lesson = beforeAndAfter({ before: counted(6, 40), after: counted(0, 40) });
    expect(lesson.p).toBeCloseTo(0.0255, 4);
    expect(lesson).toMatchObject({ verdict: 'fewer', isStrong: false });
    expect(lessonSentence(lesson, 'en-GB')).toMatch(/: some evidence of fewer returns\.$/);
  });

  test('tells more returns as plainly', () => {
    expect(beforeAndAfter({ before: counted(1, 90), after: counted(12, 80) }).verdict).toBe('more');
  });

  test('says how many would have to stay well before anything is told', () => {
    const lesson = beforeAndAfter({ before: counted(4, 40), after: counted(1, 20) });
    if (lesson.allWell === null) throw new Error('no units named');
    const then = (more: number) =>
      beforeAndAfter({ before: counted(4, 40), after: counted(1, 20 + more) }).verdict;
    expect(then(lesson.allWell)).toBe('fewer');
    expect(then(lesson.allWell - 1)).toBe('none-yet');
    expect(lessonSentence(lesson, 'en-GB')).toContain('no evidence yet that it changed');
  });

  test('says where there is nothing to compare', () => {
    const said = (before: number, after: number) =>
      lessonSentence(beforeAndAfter({ before: counted(0, before), after: counted(0, after) }), 'en-GB');
    expect(said(0, 5)).toContain('Nothing was sent back before the check');
    expect(said(5, 0)).toContain('no unit has been watched long enough');
  });
});

describe('early or late', () => {
  const at = (days: number[], wellTo: number, well: number) => [
    ...days.map((each) => ({ days: each, returned: 1, left: 0 })),
    { days: wellTo, returned: 0, left: well },
  ];

  test('is not told below ten returns, and the sentence says how many there are', () => {
    const wear = wearOf(at([1, 2, 3, 4], 90, 50));
    expect(wear).toEqual({ kind: 'too-few', returned: 4, needed: 10 });
    expect(wearSentence(wear, 'en-GB')).toBe(
      'Too few returns to say whether they come early or late: four, and 10 are needed.',
    );
  });

  test('is not told of nine returns, and of none at all in a word', () => {
    const days = [54, 187, 216, 240, 244, 335, 361, 373, 375];
    expect(wearOf(at(days, 500, 10))).toEqual({ kind: 'too-few', returned: 9, needed: 10 });
    expect(wearSentence(wearOf(at([], 90, 50)), 'en-GB')).toBe(
      'Too few returns to say whether they come early or late: none, and 10 are needed.',
    );
  });

  // NIST/SEMATECH 8.4.1.3: shape 1.72, but ten failures do not keep its interval above 1.
  test('is left open where the interval holds 1, though the shape is above it', () => {
    const wear = wearOf(at([54, 187, 216, 240, 244, 335, 361, 373, 375, 386], 500, 10));
    expect(wear.kind).toBe('undecided');
    expect(wearSentence(wear, 'en-GB')).toContain('Weibull shape 1.72 from 10 returns');
  });

  test.each([
    ['early', [1, 1, 2, 2, 3, 4, 5, 7, 9, 14, 20, 33]],
    ['late', [70, 72, 75, 78, 80, 81, 83, 85, 86, 88, 89, 90]],
  ])('%s where the whole interval says so', (kind, days) => {
    expect(wearOf(at(days, 90, 60)).kind).toBe(kind);
  });

  test('says nothing where all came back on one day', () => {
    expect(wearOf(at(Array(12).fill(30), 90, 5))).toEqual({ kind: 'no-fit', returned: 12 });
  });
});
