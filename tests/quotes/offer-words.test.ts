import { describe, expect, it } from 'vitest';
import { formatMoney } from '@/lib/money/amount';
import { offerWords, yesAfterNoWords } from '@/lib/quotes/rules/offer-words';
import { DAYS_TO_WITHDRAW } from '@/lib/quotes/rules/withdrawal-text';

const money = (minor: number) => formatMoney(minor, 'GBP', 'en-GB');
const fees = { inspectionFee: 1800, returnFee: 960 };

describe('the words of a price on a running job', () => {
  it('names the new price and the one before it, and every fee of a no', () => {
    const words = offerWords(
      { isFirst: false, isOrder: false, gross: 6000, before: 4600, cost: fees, startAfter: null },
      money,
    );
    expect(words.agreed).toBe('I agree to £60.00 with tax for this repair, instead of £46.00.');
    expect(words.declined).toContain('£27.60');
    expect(words.no).toContain('£27.60');
  });

  it('goes on at once only where the right to withdraw does not stand in the way', () => {
    const onYes = (startAfter: string | null) =>
      offerWords({ isFirst: false, isOrder: false, gross: 6000, before: 4600, cost: fees, startAfter }, money)
        .onYes;
    expect(onYes(null)).toBe('We go on with the repair at once, at the new price.');
    expect(onYes('Tuesday 15 December 2026')).toBe(
      'We go on with the repair after Tuesday 15 December 2026, or at once if you ask us to, at the new price.',
    );
  });

  it('says on the button of a first price that it costs something (Directive 2011/83/EU Art. 8(2))', () => {
    const words = offerWords(
      { isFirst: true, isOrder: true, gross: 6000, before: 0, cost: fees, startAfter: null },
      money,
    );
    expect(words.yes).toBe('Yes, repair it and pay £60.00');
    expect(words.agreed).toContain('under the terms');
    expect(words.agreed).not.toContain('instead of');
    // No work begins within the days to withdraw that this yes begins, unless asked for (Art. 7(3)).
    const waits = { gross: 6000, before: 0, cost: fees, startAfter: DAYS_TO_WITHDRAW };
    for (const isFirst of [true, false])
      expect(offerWords({ isFirst, isOrder: true, ...waits }, money).onYes).toContain(
        'after the 14 days in which you may withdraw, or at once if you ask us to',
      );
    // The first price on a claim that covers nothing: it follows the free one, and is an order all the same.
    const onClaim = offerWords(
      { isFirst: false, isOrder: true, gross: 6000, before: 0, cost: fees, startAfter: null },
      money,
    );
    expect([onClaim.yes, onClaim.agreed]).toEqual([words.yes, words.agreed]);
  });

  it('after an inspection is the first price of the repair, and in place of the inspection', () => {
    const words = offerWords(
      {
        isFirst: false,
        isOrder: false,
        isAfterInspection: true,
        gross: 6000,
        before: 1800,
        cost: fees,
        startAfter: null,
      },
      money,
    );
    expect(words.heading).toBe('Price: £60.00');
    expect(words.agreed).toBe(
      'I agree to £60.00 with tax for this repair. The £18.00 for the inspection is not added to it.',
    );
    expect(Object.values(words).join()).not.toMatch(/new price|instead of|go on|again later/i);
  });

  it('keeps the covered part at 0.00 whatever the answer is', () => {
    const words = offerWords(
      { isFirst: false, isOrder: false, gross: 2400, before: 0, cost: null, startAfter: null },
      money,
    );
    expect(words.agreed).toBe(
      'I agree to £24.00 with tax for the rest. The covered part stays free (£0.00).',
    );
    expect(words.declined).toContain('£0.00');
  });

  it('names the repair that the job is put under by a yes, first, after an inspection and later', () => {
    const over = { gross: 6000, before: 1800, cost: fees, startAfter: null, repair: 'Display replaced' };
    const agreed = (o: { isFirst: boolean; isOrder: boolean; isAfterInspection?: boolean }) =>
      offerWords({ ...over, ...o }, money).agreed;
    expect(agreed({ isFirst: true, isOrder: true })).toBe(
      'I agree to £60.00 with tax for the repair “Display replaced”, under the terms.',
    );
    expect(agreed({ isFirst: false, isOrder: false, isAfterInspection: true })).toContain(
      'for the repair “Display replaced”. The £18.00',
    );
    expect(agreed({ isFirst: false, isOrder: false })).toContain(
      'for the repair “Display replaced”, instead',
    );
  });
});

describe('the words of a yes after a no', () => {
  const words = (o: Partial<Parameters<typeof yesAfterNoWords>[0]> = {}) =>
    yesAfterNoWords({ isOrder: false, repair: null, gross: 6000, back: 2760, startAfter: null, ...o }, money);

  it('name the price, and what it costs in place of the unit back unrepaired', () => {
    expect(words()).toEqual({
      onYes: 'We repair it after all, at once, at this price. You pay when it is done.',
      yes: 'Yes, repair it after all and pay £60.00',
      agreed:
        'I said no to this price before. I now agree to £60.00 with tax for this repair, instead of the unit back unrepaired for £27.60.',
    });
    expect(words({ repair: 'Display replaced' }).agreed).toContain(
      'for the repair “Display replaced”, instead',
    );
  });

  it('are under the terms where they make the contract, and wait for the days to withdraw', () => {
    expect(words({ isOrder: true, startAfter: 'Tuesday 15 December 2026' })).toMatchObject({
      onYes:
        'We repair it after all, after Tuesday 15 December 2026, or at once if you ask us to, at this price. You pay when it is done.',
      agreed:
        'I said no to this price before. I now agree to £60.00 with tax for this repair, under the terms.',
    });
  });
});
