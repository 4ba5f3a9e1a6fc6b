import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Counted, fisherExact } from '@/lib/statistics/fisher';
import { holm, holmWith } from '@/lib/statistics/holm';
import { shareBound, shareInterval } from '@/lib/statistics/share-interval';
import { atRiskOn, type RiskCount, returnedBy, survivalCurve } from '@/lib/statistics/survival';
import { fitWeibull } from '@/lib/statistics/weibull';

/** '6 6 7+': returned at 6, 6, last seen well at 7. */
function watch(text: string): RiskCount[] {
  return text.split(' ').map((each) => {
    const isLeft = each.endsWith('+');
    return { days: Number(each.replace('+', '')), returned: isLeft ? 0 : 1, left: isLeft ? 1 : 0 };
  });
}

// Freireich et al., Blood 1963;21:699: weeks of remission; reprinted in most handbooks of survival.
const TREATED = watch('6 6 6 6+ 7 9+ 10 10+ 11+ 13 16 17+ 19+ 20+ 22 23 25+ 32+ 32+ 34+ 35+');
const PLACEBO = watch('1 1 2 2 3 4 4 5 5 8 8 8 8 11 11 12 12 15 17 22 23');

describe('the interval of a share', () => {
  // Wilson and Clopper-Pearson: the four with four decimals are Newcombe, Statistics in Medicine 1998;17:857, Table I, whose
  // values are from memory and equal to computed ones; the rest by R's binom.confint as kept in the test results of
  // statsmodels (results_proportion.py).
  test.each([
    [81, 263, 0.2553, 0.3662, 0.2527, 0.3676, 4],
    [15, 148, 0.0624, 0.1605, 0.0578, 0.1617, 4],
    [0, 20, 0, 0.1611, 0, 0.1684, 4],
    [1, 29, 0.0061, 0.1718, 0.0009, 0.1776, 4],
    [18, 20, 0.698966355, 0.972133519, 0.683017286, 0.987651473, 8],
    [4, 20, 0.080657663, 0.416017432, 0.057333997, 0.436614003, 8],
    [4, 200, 0.007804426, 0.050287087, 0.005475566, 0.050413609, 8],
    [1, 30, 0.00590859, 0.16670391, 0.000843571, 0.17216946, 7],
    [0, 30, 0, 0.11351339, 0, 0.11570331, 7],
  ])(
    'of %d of %d is the published one, by Wilson and exact',
    (counted, of, low, high, exactLow, exactHigh, digits) => {
      const wilson = shareInterval(counted, of);
      expect(wilson?.low).toBeCloseTo(low, digits);
      expect(wilson?.high).toBeCloseTo(high, digits);
      // Two bounds of 97.5 % enclose the exact interval; the lower one of those that came back is the upper one of the others.
      expect(1 - shareBound(of - counted, of, 0.975)).toBeCloseTo(exactLow, digits);
      expect(shareBound(counted, of, 0.975)).toBeCloseTo(exactHigh, digits);
    },
  );

  test('of nothing is unknown, and of a broken count refused', () => {
    expect(shareInterval(0, 0)).toBeNull();
    // Wilson's ends at none and at all are 0 and 1 themselves, whatever is lost in rounding.
    for (let of = 1; of <= 60; of += 1) {
      expect(shareInterval(0, of)?.low).toBe(0);
      expect(shareInterval(of, of)?.high).toBe(1);
    }
    expect(() => shareInterval(3, 2)).toThrow(RangeError);
    for (const level of [0, 1, 95]) expect(() => shareInterval(1, 2, level)).toThrow(RangeError);
    expect(() => shareBound(3, 2, 0.95)).toThrow(RangeError);
  });

  // Closed forms: none of n gives 1 - 0.05^(1/n); all of n leave nothing above.
  test('a bound with none and with all of them', () => {
    expect(shareBound(0, 20, 0.95)).toBeCloseTo(1 - 0.05 ** (1 / 20), 10);
    expect(shareBound(20, 20, 0.95)).toBe(1);
  });
});

describe('the survival curve of the published example', () => {
  // Two printed outputs of R's survfit, log intervals: time, at risk, events, survival, standard error, 95 %.
  test.each([
    [6, 21, 3, 0.8571429, 0.0764, 0.72, 1],
    [7, 17, 1, 0.8067227, 0.0869, 0.653, 0.996],
    [10, 15, 1, 0.7529412, 0.0963, 0.586, 0.968],
    [13, 12, 1, 0.6901961, 0.1068, 0.51, 0.935],
    [16, 11, 1, 0.627451, 0.1141, 0.439, 0.896],
    [22, 7, 1, 0.5378151, 0.1282, 0.337, 0.858],
    [23, 6, 1, 0.4481793, 0.1346, 0.249, 0.807],
  ])('has the printed row of week %d', (week, atRisk, returned, well, error, low, high) => {
    const step = survivalCurve(TREATED).find(({ days }) => days === week);
    expect(step).toMatchObject({ atRisk, returned });
    expect(step?.well).toBeCloseTo(well, 7);
    expect(step?.error).toBeCloseTo(error, 4);
    expect(step?.low).toBeCloseTo(low, 3);
    expect(step?.high).toBeCloseTo(high, 3);
    expect(atRiskOn(TREATED, week)).toBe(atRisk);
  });

  test('has a step for each day of a return and no other', () => {
    expect(survivalCurve(TREATED).map(({ days }) => days)).toEqual([6, 7, 10, 13, 16, 22, 23]);
  });

  test('of the placebo falls to nought, to the printed digits', () => {
    const shares = survivalCurve(PLACEBO).map(({ well }) => Number(well.toFixed(4)));
    expect(shares).toEqual([
      0.9048, 0.8095, 0.7619, 0.6667, 0.5714, 0.381, 0.2857, 0.1905, 0.1429, 0.0952, 0.0476, 0,
    ]);
    expect(survivalCurve(PLACEBO).at(-1)).toMatchObject({ low: 0, high: 1 });
  });

  test('is the same from a counted table as from one row a unit, in any order', () => {
    const counted = [
      { days: 7, returned: 1, left: 0 },
      { days: 6, returned: 3, left: 1 },
      { days: 9, returned: 0, left: 1 },
      ...watch('35+ 34+ 10 10+ 11+ 13 16 17+ 19+ 20+ 22 23 25+ 32+ 32+'),
    ];
    expect(survivalCurve(counted)).toEqual(survivalCurve(TREATED));
  });
});

describe('the share returned by a day', () => {
  test('is the plain share with the plain interval where every unit was seen to the end', () => {
    const answer = returnedBy([...watch('10 40'), { days: 90, returned: 0, left: 5 }], 90);
    expect(answer?.share).toBeCloseTo(2 / 7, 12);
    expect(answer?.worth).toBeCloseTo(7, 9);
    expect(answer?.interval.low).toBeCloseTo(shareInterval(2, 7)?.low ?? 0, 9);
    expect(answer?.interval.high).toBeCloseTo(shareInterval(2, 7)?.high ?? 0, 9);
  });

  test('stays open upwards where none came back', () => {
    const answer = returnedBy([{ days: 90, returned: 0, left: 20 }], 90);
    expect(answer?.share).toBe(0);
    expect(answer?.interval).toEqual(shareInterval(0, 20));
  });

  // Ten units for 45 days and five for 45 more: 90 / (45/10 + 45/5) = 6.667 units to the end.
  test('counts units watched for half the time as a part of one', () => {
    const answer = returnedBy([watch('45+ 45+ 45+ 45+ 45+'), watch('90+ 90+ 90+ 90+ 90+')].flat(), 90);
    expect(answer?.worth).toBeCloseTo(90 / (45 / 10 + 45 / 5), 9);
  });

  test('says where nobody was watched for so long, and nothing where nobody was watched at all', () => {
    expect(returnedBy(watch('10 40+'), 90)).toMatchObject({ days: 40, isReached: false, share: 0.5 });
    expect(returnedBy(watch('0+'), 90)).toBeNull();
    expect(() => survivalCurve([{ days: -1, returned: 1, left: 0 }])).toThrow(RangeError);
  });
});

describe('the Weibull fit', () => {
  // NIST/SEMATECH e-Handbook of Statistical Methods 8.4.1.3: ten failures, ten units censored at 500 hours.
  const HOURS = [...watch('54 187 216 240 244 335 361 373 375 386'), { days: 500, returned: 0, left: 10 }];

  test('finds the shape and the scale of the published example', () => {
    const fit = fitWeibull(HOURS);
    expect(fit?.shape).toBeCloseTo(1.7208, 4);
    expect(fit?.scale).toBeCloseTo(606.528, 2);
    expect(fit?.logLikelihood).toBeCloseTo(-75.135, 3);
  });

  // By its definition the likelihood at either end is lower by half the 95 % point of chi square, 3.841 in any handbook table.
  test('has an interval whose ends are less likely by 1.92', () => {
    const fit = fitWeibull(HOURS);
    if (!fit) throw new Error('no fit');
    for (const shape of [fit.shapeInterval.low, fit.shapeInterval.high])
      expect(fit.logLikelihood - bestWith(shape)).toBeCloseTo(3.841 / 2, 3);
  });

  // The likelihood written out unit by unit, with the best scale for a shape.
  function bestWith(shape: number): number {
    const sum = HOURS.reduce((all, each) => all + (each.returned + each.left) * each.days ** shape, 0);
    const scale = (sum / 10) ** (1 / shape);
    return HOURS.reduce((all, { days, returned, left }) => {
      const hazard = (days / scale) ** shape;
      const density = Math.log(shape / scale) + (shape - 1) * Math.log(days / scale) - hazard;
      return all + (returned ? density : -hazard * left);
    }, 0);
  }

  test('is refused where all came back on one day, or none did', () => {
    expect(fitWeibull(watch('30 30 30 90+'))).toBeNull();
    expect(fitWeibull(watch('30+ 90+'))).toBeNull();
  });

  test('takes a unit that came back on its first day', () => {
    expect(fitWeibull(watch('0 0 1 3 9 30 90+ 90+ 90+'))?.shape).toBeLessThan(1);
  });
});

describe("Fisher's exact test", () => {
  // [[3, 1], [1, 3]] is Fisher's own tea tasting (The Design of Experiments, 1935), two-sided 0.4857. All are
  // recomputed by scipy 1.17.1; where the tables come from is from memory.
  const tables: [string, Counted, Counted, number][] = [
    ['3 of 4, 1 of 4', { returned: 3, units: 4 }, { returned: 1, units: 4 }, 0.485714],
    ['1 of 10, 11 of 14', { returned: 1, units: 10 }, { returned: 11, units: 14 }, 0.002759456],
    ['8 of 10, 1 of 6', { returned: 8, units: 10 }, { returned: 1, units: 6 }, 0.034965],
    ['10 of 12, 3 of 18', { returned: 10, units: 12 }, { returned: 3, units: 18 }, 0.000536724],
  ];
  test.each(tables)('gives the published p-value of the table “%s”, from either side', (_, ours, rest, p) => {
    expect(fisherExact(ours, rest)).toBeCloseTo(p, 6);
    expect(fisherExact(rest, ours)).toBeCloseTo(p, 6);
  });

  test('says nothing where a group is empty or nothing came back, and refuses broken counts', () => {
    expect(fisherExact({ returned: 0, units: 0 }, { returned: 2, units: 9 })).toBe(1);
    expect(fisherExact({ returned: 0, units: 5 }, { returned: 0, units: 9 })).toBe(1);
    expect(() => fisherExact({ returned: 6, units: 5 }, { returned: 0, units: 9 })).toThrow(RangeError);
  });

  // scipy.stats.fisher_exact([[30, 970], [2500, 96500]]) and the same with 60 of 1,000, scipy 1.17.1.
  test('keeps its digits among a hundred thousand units', () => {
    const rest = { returned: 2500, units: 99_000 };
    expect(fisherExact({ returned: 30, units: 1000 }, rest)).toBeCloseTo(0.312295995748192, 10);
    expect(fisherExact({ returned: 60, units: 1000 }, rest) / 2.228345129853617e-9).toBeCloseTo(1, 8);
  });
});

describe("Holm's correction", () => {
  // statsmodels.stats.multitest.multipletests(method='holm') and R's p.adjust give the same; worked by hand from Holm 1979:
  // 4 x 0.005, 3 x 0.01, 2 x 0.03, then never below the one before.
  test('of four looks', () => {
    expect(holm([0.01, 0.04, 0.03, 0.005]).map((p) => Number(p.toFixed(10)))).toEqual([
      0.03, 0.06, 0.06, 0.02,
    ]);
  });

  test('of one look taken again is that of all of them anew', () => {
    const p = fc.integer({ min: 0, max: 20 }).map((twentieth) => twentieth / 20);
    fc.assert(
      fc.property(fc.array(p, { minLength: 1, maxLength: 12 }), fc.nat(), p, (ps, at, next) => {
        const place = at % ps.length;
        expect(holmWith(ps)(place, next)).toBe(holm(ps.with(place, next))[place]);
      }),
    );
  });

  test('never goes past certain, and refuses what is no p-value', () => {
    expect(holm([0.6, 0.7])).toEqual([1, 1]);
    expect(holm([])).toEqual([]);
    expect(() => holm([1.2])).toThrow(RangeError);
  });
});
