import { describe, expect, test } from 'vitest';
import { equalWatch, SPANS, together, type Watched, without } from '@/lib/returns/rules/equal-watch';
import { compareAll, isFlagged } from '@/lib/returns/rules/evidence';
import { fisherExact } from '@/lib/statistics/fisher';
import { chance } from '@/tests/makers/chance';

type Unit = { age: number; cover: number; backOn: number | null };

/** What the database counts of units (tests/returns/returns-data.test.ts looks that it does). */
function watched(units: readonly Unit[]): Watched {
  const planned = ({ age, cover }: Unit) => Math.min(age, cover);
  const isBack = (unit: Unit, within: number) =>
    unit.backOn !== null && unit.backOn <= Math.min(within, planned(unit));
  return {
    units: units.length,
    returned: units.filter((unit) => isBack(unit, Number.POSITIVE_INFINITY)).length,
    spans: SPANS.map((days) => {
      const old = units.filter((unit) => planned(unit) >= days);
      return { units: old.length, returned: old.filter((unit) => isBack(unit, days)).length };
    }),
  };
}

const many = (count: number, age: number, backOn: readonly number[] = [], cover = 365): Unit[] =>
  Array.from({ length: count }, (_, unit) => ({ age, cover, backOn: backOn[unit] ?? null }));

const judged = (ours: readonly Unit[], rest: readonly Unit[]) => {
  const [comparison] = compareAll([{ key: 'ours', ...equalWatch(watched(ours), watched(rest)) }]);
  if (!comparison) throw new Error('no comparison');
  return comparison;
};

const OLD = many(40, 365, [40, 90, 150, 200, 280, 330]);

describe('equal watches', () => {
  test('a lot that is only older is not flagged for it, though its whole count would be', () => {
    const young = many(60, 7);
    expect(fisherExact({ returned: 6, units: 40 }, { returned: 0, units: 60 })).toBeLessThan(0.01);
    expect(judged(OLD, young)).toMatchObject({ days: null, evidence: 'too-young' });
    expect(judged(young, OLD)).toMatchObject({ days: null, evidence: 'too-young' });
    // Had they all gone out a hundred days ago: two of forty beside none of sixty.
    expect(judged(OLD, many(60, 100))).toMatchObject({
      days: 90,
      ours: { returned: 2, units: 40 },
      rest: { returned: 0, units: 60 },
      evidence: 'none-yet',
    });
  });

  test('a lot that fails in its first weeks is flagged once two of three were out for two', () => {
    const first = [3, 4, 6, 8, 9, 11];
    expect(judged(many(8, 13, first), OLD).evidence).toBe('too-young');
    expect(judged(many(8, 15, first), OLD)).toMatchObject({ days: 14, evidence: 'strong' });
    const mostOfIt = [...many(6, 15, first), ...many(3, 5)];
    expect(judged(mostOfIt, OLD)).toMatchObject({ days: 14, ours: { returned: 6, units: 6 } });
  });

  test('short cover is compared over its own term', () => {
    const short = many(30, 400, [2, 20, 29], 30);
    expect(judged(short, OLD)).toMatchObject({ days: 30, ours: { returned: 3, units: 30 } });
  });

  test('a few oldest units do not stand for a lot, nor a rest that is too small for it', () => {
    expect(judged([...many(3, 365, [20, 20, 20]), ...many(30, 60)], OLD).days).toBe(60);
    expect(judged(many(40, 365), [...many(26, 365), ...many(200, 70)]).days).toBe(60);
    expect(judged(many(40, 365), [...many(27, 365), ...many(200, 70)]).days).toBe(360);
    expect(judged(many(900, 365), many(100, 95)).days).toBe(90);
  });

  test('which span it is does not depend on what came back', () => {
    const random = chance(11);
    for (let run = 0; run < 200; run += 1) {
      const ours = units(random, 20, 0, 500);
      const rest = units(random, 60, 0, 500);
      const well = (side: Unit[]) => watched(side.map((unit) => ({ ...unit, backOn: null })));
      expect(equalWatch(watched(ours), watched(rest)).days).toBe(equalWatch(well(ours), well(rest)).days);
    }
  });

  test('sides are put together and taken apart', () => {
    const [a, b] = [watched(OLD), watched(many(10, 70, [5]))];
    expect(without(together([a, b]), a)).toEqual(b);
  });
});

// One-sided 99 % of the normal distribution (handbook tables).
const Z = 2.3263;

/** Sent evenly between two ages; each comes back at the same rate by the day, early ones a little more, whatever its age. */
function units(random: () => number, count: number, youngest: number, oldest: number, rate = 1): Unit[] {
  return Array.from({ length: count }, () => {
    const age = Math.floor(youngest + random() * (oldest - youngest));
    // Weibull with shape 0.8: a tenth is back within a year at the usual rate.
    const day = Math.ceil(365 * (-Math.log(1 - random()) / (0.105 * rate)) ** (1 / 0.8));
    return { age, cover: random() < 0.3 ? 90 : 365, backOn: day <= Math.min(age, 365) ? day : null };
  }).map((unit) => ({ ...unit, backOn: unit.backOn && unit.backOn <= unit.cover ? unit.backOn : null }));
}

/** Pages of six lots of 20 to 100 units of one part, each bought after the one before and sent out over four months. */
function pages(o: { count: number; bad: number; seed: number }) {
  const random = chance(o.seed);
  const told = { equal: 0, plain: 0, bad: 0 };
  for (let page = 0; page < o.count; page += 1) {
    const lots = Array.from({ length: 6 }, (_, lot) => {
      const size = 20 + Math.floor(random() * 81);
      return watched(units(random, size, lot * 80, lot * 80 + 120, lot === 1 ? o.bad : 1));
    });
    const all = together(lots);
    const looks = lots.map((ours, lot) => ({ key: String(lot), ours, rest: without(all, ours) }));
    const equal = compareAll(looks.map(({ key, ours, rest }) => ({ key, ...equalWatch(ours, rest) })));
    if (equal.some(isFlagged)) told.equal += 1;
    if (compareAll(looks.map((look) => ({ ...look, days: 1 }))).some(isFlagged)) told.plain += 1;
    if (equal[1] && isFlagged(equal[1])) told.bad += 1;
  }
  return { equal: told.equal / o.count, plain: told.plain / o.count, bad: told.bad / o.count };
}

describe('flags over simulated pages of lots of different ages', () => {
  test('stand on at most one page in twenty where all lots are alike, and on many more by whole counts', () => {
    const count = 600;
    const told = pages({ count, bad: 1, seed: 20261129 });
    expect(told.equal).toBeLessThan(0.05 + Z * Math.sqrt((0.05 * 0.95) / count));
    expect(told.plain).toBeGreaterThan(0.1);
  });

  test('find a lot of two to six months that comes back six times as often', () => {
    expect(pages({ count: 150, bad: 6, seed: 5 }).bad).toBeGreaterThan(0.6);
  });
});
