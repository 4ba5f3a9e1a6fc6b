import { describe, expect, it } from 'vitest';
import { netPrice, repairWorth } from '@/lib/returns/rules/repair-worth';
import { worthSentence } from '@/lib/returns/rules/repair-worth-words';
import { type Reserve, type ReserveAnswer, reserveFor } from '@/lib/returns/rules/reserve';
import type { RiskCount } from '@/lib/statistics/survival';

const reserve = (reserveMinor: number, upperMinor: number, worth = 40): ReserveAnswer => ({
  known: true,
  reserve: { reserveMinor, upperMinor, chance: { worth } } as Reserve,
});
/** Forty units, all watched to the end of a term of ninety days. */
const LONG = { watch: [{ days: 90, returned: 0, left: 40 }], termDays: 90 };

describe('what a repair leaves after its warranty', () => {
  it('takes the tax out of a price', () => {
    expect(netPrice(12_000, 2_000, true)).toBe(10_000);
    expect(netPrice(12_000, 2_000, false)).toBe(12_000);
    expect(netPrice(100, 1_900, true)).toBe(84);
    expect(() => netPrice(100, -1, true)).toThrow(RangeError);
  });

  it.each([
    [600, 1_900, 'yes'],
    [600, 2_000, 'yes'],
    [600, 2_001, 'in-doubt'],
    [2_000, 2_500, 'in-doubt'],
    [2_001, 2_500, 'no'],
  ] as const)('with 2,000 left, %i expected and %i at most: %s', (expected, upper, carries) => {
    const worth = repairWorth({
      netMinor: 6_000,
      plannedMinor: 4_000,
      reserve: reserve(expected, upper),
      returned: 1,
      ...LONG,
    });
    expect(worth).toMatchObject({
      leavesMinor: 2_000,
      afterReserveMinor: 2_000 - expected,
      afterUpperMinor: 2_000 - upper,
      carries,
    });
  });

  it.each([
    [2, 11.9, 'too-few'],
    [2, 12, 'in-doubt'],
    [3, 5, 'in-doubt'],
  ] as const)('with %i back and units worth %d: %s', (returned, worth, carries) => {
    const asked = { netMinor: 6_000, plannedMinor: 4_000, returned, ...LONG };
    expect(repairWorth({ ...asked, reserve: reserve(600, 2_500, worth) }).carries).toBe(carries);
  });

  it.each([
    [6_000, 600, 2_000, 'yes'],
    [6_000, 600, 2_001, 'in-doubt'],
    [6_000, 2_000, 2_500, 'in-doubt'],
    [6_000, 2_001, 2_500, 'no'],
    [4_000, 0, 0, 'yes'],
    [3_999, 0, 0, 'below-cost'],
  ])(
    'at a net price of %i, a reserve of %i and %i at most: %s, to the last unit',
    (netMinor, own, upper, carries) => {
      const asked = { netMinor, plannedMinor: 4_000, returned: 3, ...LONG };
      expect(repairWorth({ ...asked, reserve: reserve(own, upper) }).carries).toBe(carries);
    },
  );

  it('does not put down to warranty what the price does not cover anyway', () => {
    const asked = { netMinor: 3_900, plannedMinor: 4_000, returned: 3, ...LONG };
    expect(repairWorth({ ...asked, reserve: reserve(600, 2_500) }).carries).toBe('below-cost');
  });

  it('claims nothing while no reserve is known', () => {
    const worth = repairWorth({
      netMinor: 6_000,
      plannedMinor: 4_000,
      reserve: { known: false, reason: 'no-cost' },
      returned: 0,
      ...LONG,
    });
    expect(worth.carries).toBe('unknown');
    expect(worthSentence(worth, { currency: 'GBP', locale: 'en-GB' })).toBe(
      'One repair brings £60.00 without tax and costs £40.00 in bench time and parts, which leaves £20.00. What its warranty takes is not known yet.',
    );
  });

  it('says it in words', () => {
    const worth = repairWorth({
      netMinor: 6_000,
      plannedMinor: 4_000,
      reserve: reserve(600, 2_500),
      returned: 1,
      ...LONG,
    });
    expect(worthSentence(worth, { currency: 'GBP', locale: 'en-GB' })).toBe(
      'One repair brings £60.00 without tax and costs £40.00 in bench time and parts, which leaves £20.00. Its warranty is expected to take £6.00, and £25.00 at most: it may lose money.',
    );
  });

  it('says nothing good of twelve units that left yesterday with a year of cover', () => {
    const watch = [{ days: 1, returned: 0, left: 12 }];
    const termDays = 365;
    const worth = repairWorth({
      netMinor: 6_000,
      plannedMinor: 4_000,
      reserve: reserveFor({ counts: watch, termDays, costs: [], plannedCostMinor: 3_000 }),
      returned: 0,
      watch,
      termDays,
    });
    expect(worth.carries).toBe('too-few');
    expect(worthSentence(worth, { currency: 'GBP', locale: 'en-GB' })).toBe(
      'One repair brings £60.00 without tax and costs £40.00 in bench time and parts, which leaves £20.00. Too few units were watched long enough to say what its warranty takes: it is told from 12 watched units or three returns on, once 12 units, or two of three, were watched for two thirds of the term.',
    );
  });

  const young = { days: 10, returned: 0, left: 20 };
  it.each<[string, RiskCount[], boolean]>([
    ['two thirds of the term', [{ days: 60, returned: 0, left: 12 }], true],
    ['a day less', [{ days: 59, returned: 0, left: 12 }], false],
    ['a dozen long, whatever is young', [{ days: 60, returned: 0, left: 12 }, young, young], true],
    ['eleven long beside twenty young ones', [{ days: 60, returned: 0, left: 11 }, young], false],
    [
      'three back at once and one watched long beside twenty young ones',
      [{ days: 5, returned: 3, left: 0 }, { days: 90, returned: 0, left: 1 }, young],
      false,
    ],
    [
      'two of three, with those that came back',
      [
        { days: 5, returned: 3, left: 0 },
        { days: 90, returned: 0, left: 1 },
        { days: 9, returned: 0, left: 2 },
      ],
      true,
    ],
    ['nothing but early returns to go by', [{ days: 5, returned: 9, left: 3 }], false],
  ])('a term of ninety days, %s', (_, watch, isLong) => {
    const asked = { netMinor: 6_000, plannedMinor: 4_000, returned: 3, watch, termDays: 90 };
    const carries = (upper: number) => repairWorth({ ...asked, reserve: reserve(600, upper) }).carries;
    expect([carries(1_900), carries(2_500)]).toEqual(isLong ? ['yes', 'in-doubt'] : ['too-few', 'too-few']);
    // What is lost already is not won back: later returns only add to it.
    const lost = repairWorth({ ...asked, reserve: reserve(2_001, 2_500) });
    expect(lost.carries).toBe('no');
    const words = worthSentence(lost, { currency: 'GBP', locale: 'en-GB' });
    expect(words.includes('In the days watched so far')).toBe(!isLong);
  });
});
