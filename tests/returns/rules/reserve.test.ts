import { describe, expect, test } from 'vitest';
import { addToPrice, type Reserve, type ReserveAnswer, reserveFor } from '@/lib/returns/rules/reserve';
import { boundSentence, reserveSentence } from '@/lib/returns/rules/reserve-words';
import type { RiskCount } from '@/lib/statistics/survival';
import { chance } from '@/tests/makers/chance';

const POUNDS = { currency: 'GBP', locale: 'en-GB' };
const COUNTS: RiskCount[] = [
  ...[10, 20, 30, 40].map((days) => ({ days, returned: 1, left: 0 })),
  { days: 90, returned: 0, left: 96 },
];
const ASKED = {
  counts: COUNTS,
  termDays: 90,
  costs: [2000, 2400, 2600, 3000],
  plannedCostMinor: null,
};

function reserveOf(answer: ReserveAnswer): Reserve {
  if (!answer.known) throw new Error(answer.reason);
  return answer.reserve;
}

describe('a reserve', () => {
  // The bounds by scipy 1.17.1: beta.ppf(0.94, 5, 96) = 0.0864310; 2500 + t.ppf(0.94, 3) x stdev / 2 = 2948.86; joined 219.89.
  test('is the share times the mean cost, and the upper bound joins those of both', () => {
    const reserve = reserveOf(reserveFor(ASKED));
    expect(reserve).toMatchObject({ reserveMinor: 100, costMinor: 2500, costBasis: 'units', costed: 4 });
    expect(reserve.chanceUpper).toBeCloseTo(0.086431, 6);
    expect(reserve.costUpperMinor).toBe(2949);
    expect(reserve.upperMinor).toBe(220);
    expect(reserve.chance).toMatchObject({ isReached: true, days: 90 });
  });

  test('with fewer than three costs takes the planned one, and without it is not known', () => {
    const few = { ...ASKED, costs: [2000, 2400] };
    expect(reserveOf(reserveFor({ ...few, plannedCostMinor: 3000 }))).toMatchObject({
      costMinor: 3000,
      costBasis: 'planned',
      reserveMinor: 120,
    });
    expect(reserveFor(few)).toEqual({ known: false, reason: 'no-cost' });
    expect(reserveFor({ ...ASKED, counts: [] })).toEqual({ known: false, reason: 'not-watched' });
  });

  test('of a repair that never came back is nothing, but its upper bound is not', () => {
    const never = {
      ...ASKED,
      counts: [{ days: 90, returned: 0, left: 30 }],
      costs: [],
      plannedCostMinor: 3000,
    };
    const reserve = reserveOf(reserveFor(never));
    expect(reserve.reserveMinor).toBe(0);
    // 1 - 0.06^(1/30), the exact bound with none of thirty
    expect(reserve.upperMinor).toBe(Math.ceil(3000 * (1 - 0.06 ** (1 / 30))));
  });

  test('refuses costs below nought and a term of no days', () => {
    expect(() => reserveFor({ ...ASKED, costs: [-1, 2, 3] })).toThrow(RangeError);
    expect(() => reserveFor({ ...ASKED, termDays: 0 })).toThrow(RangeError);
  });

  test('reads as a sentence, and says where no unit has reached the end of its term', () => {
    expect(reserveSentence(reserveFor(ASKED), 90, POUNDS)).toBe(
      'Within the term of 90 days 4% come back (1.6% to 9.8%), at £25.00 a returned unit, all its claims together, from 4 units: £1.00 a repair, and at most £2.20, which holds in at least 90% of such reckonings.',
    );
    const young = reserveSentence(reserveFor({ ...ASKED, termDays: 365 }), 365, POUNDS);
    expect(young).toContain('Within 90 days, since no unit has been watched for the whole term of 365 yet,');
    expect(young).toContain('It will rise');
    expect(reserveSentence({ known: false, reason: 'no-cost' }, 90, POUNDS)).toContain('Not known yet');
    expect(boundSentence({ level: 0.9 }, 'en-GB')).toContain('holds in at least 90%');
  });
});

describe('the upper bound over 5,000 simulated years', () => {
  const TERM = 90;
  type Law = { mean: number; draw: (random: () => number) => number };
  // Two laws that lean to the dear side, as bench time does: even on the logarithm from 8 to 72, and lognormal around 25.
  const even: Law = { mean: 6400 / Math.log(9), draw: (random) => 800 * 9 ** random() };
  const lognormal: Law = {
    mean: 2500 * Math.exp(0.6 ** 2 / 2),
    draw: (random) =>
      2500 * Math.exp(0.6 * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())),
  };

  /** Of those that came back, and of those that came back twice, how many come back once more in what is left of the term. */
  const AGAIN = 0.3;

  /**
   * A year: units sent on any day of it, watched until its end; a share comes back, evenly over the term, and some of those
   * again. Costs are of the returned unit, all its claims so far together.
   */
  function year(random: () => number, units: number, share: number, law: Law) {
    const counts: RiskCount[] = [];
    const costs: number[] = [];
    const ofClaims: number[] = [];
    for (let unit = 0; unit < units; unit += 1) {
      const watched = Math.min(TERM, 1 + Math.floor(random() * 365));
      const back = random() < share ? 1 + Math.floor(random() * TERM) : Number.POSITIVE_INFINITY;
      const isReturned = back <= watched;
      counts.push({ days: Math.min(back, watched), returned: isReturned ? 1 : 0, left: isReturned ? 0 : 1 });
      if (!isReturned) continue;
      const claims: number[] = [];
      for (let on = back; on <= watched; ) {
        claims.push(Math.round(law.draw(random)));
        on =
          random() < AGAIN && on < TERM
            ? on + 1 + Math.floor(random() * (TERM - on))
            : Number.POSITIVE_INFINITY;
      }
      costs.push(claims.reduce((sum, cost) => sum + cost, 0));
      ofClaims.push(...claims);
    }
    return { counts, costs, ofClaims };
  }

  /** Claims a returned unit comes to in a whole term, first day of the first by first day: 1, and what follows it. */
  function claimsOfReturned(): number {
    const from: number[] = Array(TERM + 1).fill(1);
    for (let on = TERM - 1; on >= 1; on -= 1) {
      const later = from.slice(on + 1).reduce((sum, claims) => sum + claims, 0);
      from[on] = 1 + (AGAIN * later) / (TERM - on);
    }
    return from.slice(1).reduce((sum, claims) => sum + claims, 0) / TERM;
  }

  test.each([
    ['even', 60, 0.15, even],
    ['even', 100, 0.08, even],
    ['lognormal', 100, 0.08, lognormal],
    ['lognormal', 300, 0.03, lognormal],
    ['lognormal', 600, 0.06, lognormal],
  ])(
    'costs %s, %d units a year of which %d come back: it holds at least as often as it says',
    (_, units, share, law) => {
      const random = chance(20261125 + units);
      const years = 1000;
      const truth = share * law.mean * claimsOfReturned();
      let held = 0;
      let byClaim = 0;
      let middle = 0;
      for (let each = 0; each < years; each += 1) {
        const { ofClaims, ...seen } = year(random, units, share, law);
        const asked = { ...seen, termDays: TERM, plannedCostMinor: Math.round(law.mean) };
        const reserve = reserveOf(reserveFor(asked));
        if (reserveOf(reserveFor({ ...asked, costs: ofClaims })).upperMinor >= truth) byClaim += 1;
        if (reserve.upperMinor >= truth) held += 1;
        if (reserve.reserveMinor >= truth) middle += 1;
      }
      // Binomial tolerance at 99 %, one-sided, normal approximation: z = 2.3263 (handbook tables of the normal distribution).
      const tolerance = 2.3263 * Math.sqrt((0.9 * 0.1) / years);
      expect(held / years).toBeGreaterThan(0.9 - tolerance);
      // Nor does it ask for much more than it has to.
      expect(held / years).toBeLessThan(0.97);
      // The plain reserve is no such bound: were it taken for one, this simulation would notice.
      expect(middle / years).toBeLessThan(0.9 - tolerance);
      // Nor is one reckoned with the cost of a claim, which forgets that a unit may come back twice.
      expect(byClaim / years).toBeLessThan(0.9 - tolerance);
    },
  );
});

describe('what to add to a price', () => {
  test.each([
    [208, 'GBP', 210],
    [210, 'GBP', 210],
    [0, 'GBP', 0],
    [1234, 'EUR', 1250],
    [12_301, 'EUR', 12_400],
    [208, 'JPY', 210],
    [1234, 'KWD', 1300],
  ])('%d of %s is %d', (upper, currency, added) => {
    expect(addToPrice(upper, currency)).toBe(added);
  });

  test('refuses what is no amount', () => {
    expect(() => addToPrice(-1, 'GBP')).toThrow(RangeError);
    expect(() => addToPrice(1.5, 'GBP')).toThrow(RangeError);
  });
});
