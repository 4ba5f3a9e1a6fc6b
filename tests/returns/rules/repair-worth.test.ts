import { describe, expect, it } from 'vitest';
import { netPrice, repairWorth } from '@/lib/returns/rules/repair-worth';
import { worthSentence } from '@/lib/returns/rules/repair-worth-words';
import type { Reserve, ReserveAnswer } from '@/lib/returns/rules/reserve';

const reserve = (reserveMinor: number, upperMinor: number, worth = 40): ReserveAnswer => ({
  known: true,
  reserve: { reserveMinor, upperMinor, chance: { worth } } as Reserve,
});

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
    const asked = { netMinor: 6_000, plannedMinor: 4_000, returned };
    expect(repairWorth({ ...asked, reserve: reserve(600, 2_500, worth) }).carries).toBe(carries);
  });

  it('does not put down to warranty what the price does not cover anyway', () => {
    const asked = { netMinor: 3_900, plannedMinor: 4_000, returned: 3 };
    expect(repairWorth({ ...asked, reserve: reserve(600, 2_500) }).carries).toBe('below-cost');
  });

  it('claims nothing while no reserve is known', () => {
    const worth = repairWorth({
      netMinor: 6_000,
      plannedMinor: 4_000,
      reserve: { known: false, reason: 'no-cost' },
      returned: 0,
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
    });
    expect(worthSentence(worth, { currency: 'GBP', locale: 'en-GB' })).toBe(
      'One repair brings £60.00 without tax and costs £40.00 in bench time and parts, which leaves £20.00. Its warranty is expected to take £6.00, and £25.00 at most: it may lose money.',
    );
  });
});
