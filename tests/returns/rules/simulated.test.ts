import { describe, expect, test } from 'vitest';
import { compareAll } from '@/lib/returns/rules/evidence';
import { type RiskCount, returnedBy } from '@/lib/statistics/survival';
import { chance } from '@/tests/makers/chance';

// One-sided 99 % of the normal distribution (handbook tables).
const Z = 2.3263;
const tolerance = (share: number, runs: number) => Z * Math.sqrt((share * (1 - share)) / runs);

/** Pages of ten lots of 10 to 80 units; each unit comes back by chance alone, but for those of the first lot. */
function flaggedPages(o: { pages: number; usual: number; first: number; seed: number }) {
  const random = chance(o.seed);
  let any = 0;
  let first = 0;
  for (let page = 0; page < o.pages; page += 1) {
    const lots = Array.from({ length: 10 }, (_, lot) => {
      const units = 10 + Math.floor(random() * 71);
      let returned = 0;
      for (let unit = 0; unit < units; unit += 1)
        if (random() < (lot === 0 ? o.first : o.usual)) returned += 1;
      return { returned, units };
    });
    const all = lots.reduce(
      (sum, lot) => ({ returned: sum.returned + lot.returned, units: sum.units + lot.units }),
      { returned: 0, units: 0 },
    );
    const told = compareAll(
      lots.map((ours, lot) => ({
        key: String(lot),
        days: 90,
        ours,
        rest: { returned: all.returned - ours.returned, units: all.units - ours.units },
      })),
    );
    if (told.some(({ evidence }) => evidence !== 'none-yet')) any += 1;
    if (told[0]?.evidence !== 'none-yet') first += 1;
  }
  return { any: any / o.pages, first: first / o.pages };
}

describe('flags over simulated pages', () => {
  test('stand on at most one page in twenty where all lots are alike', () => {
    const pages = 1500;
    const { any } = flaggedPages({ pages, usual: 0.06, first: 0.06, seed: 20261125 });
    expect(any).toBeLessThan(0.05 + tolerance(0.05, pages));
    expect(any).toBeGreaterThan(0);
  });

  test('find a lot that comes back five times as often on more than half of all pages', () => {
    expect(flaggedPages({ pages: 300, usual: 0.06, first: 0.3, seed: 7 }).first).toBeGreaterThan(0.5);
  });
});

describe('the interval of the share returned by a day, over simulated watches', () => {
  // Units sent on any day of half a year and watched to its end; some come back, evenly over ninety days.
  function watch(random: () => number, units: number, share: number): RiskCount[] {
    return Array.from({ length: units }, () => {
      const watched = 1 + Math.floor(random() * 182);
      const back = random() < share ? 1 + Math.floor(random() * 90) : Number.POSITIVE_INFINITY;
      const isReturned = back <= watched;
      return { days: Math.min(back, watched), returned: isReturned ? 1 : 0, left: isReturned ? 0 : 1 };
    });
  }

  test.each([
    [60, 0.1],
    [200, 0.05],
    [200, 0.2],
  ])('%d units of which %d come back: it holds the true share about as often as it says', (units, share) => {
    const random = chance(units + share * 1000);
    const runs = 1500;
    let held = 0;
    for (let run = 0; run < runs; run += 1) {
      const by = returnedBy(watch(random, units, share), 90);
      if (by && by.interval.low <= share && share <= by.interval.high) held += 1;
    }
    // Wilson's interval holds 95 % on the average over shares, a point less at some (Brown, Cai and DasGupta 2001, from memory).
    expect(held / runs).toBeGreaterThan(0.94 - tolerance(0.94, runs));
    expect(held / runs).toBeLessThan(0.99);
  });
});
