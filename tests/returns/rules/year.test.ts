import { describe, expect, test } from 'vitest';
import { endedOfTerm, yearAgainstReserve } from '@/lib/returns/rules/year';
import { yearSentence } from '@/lib/returns/rules/year-words';

const POUNDS = { currency: 'GBP', locale: 'en-GB' };
const reserve = { reserveMinor: 100, upperMinor: 208 };
const year = (sent: number, spentMinor: number, units: number, own: number, uncosted = 0) =>
  yearAgainstReserve({
    sent,
    reserve,
    spentMinor,
    uncosted,
    ended: { units, spentMinor: own, uncosted },
  });

describe("a year's reserve", () => {
  test.each([
    [2500, 'within', 'cost £25.00, within their reserve of £25.00.'],
    [3000, 'above-reserve', 'cost £30.00, more than their reserve of £25.00, within the upper £52.00.'],
    [5200, 'above-reserve', 'cost £52.00, more than their reserve of £25.00, within the upper £52.00.'],
    [5201, 'above-upper', 'cost £52.01, more than even the upper £52.00 of their reserve of £25.00.'],
  ])('%d spent on units whose cover ended: %s', (own, verdict, words) => {
    const told = year(40, 5200, 25, own);
    expect(told.ended.verdict).toBe(verdict);
    expect(yearSentence(told, POUNDS)).toBe(
      `In the last year 40 units were sent back with a reserve of £40.00, £83.20 at most, and £52.00 went on claims opened in it, of these and of earlier units. Cover as long as the term ended for 25 units in it: their own claims ${words}`,
    );
  });

  test.each([
    ['a shop two months old', year(20, 0, 0, 0)],
    ['none sent, and claims of units sent before', year(0, 4500, 0, 0)],
    ['eleven covers that ended', year(0, 4500, 11, 4500)],
  ])('gives no verdict on %s', (_, told) => {
    expect(told.ended.verdict).toBeNull();
    expect(yearSentence(told, POUNDS)).not.toMatch(/within|more than/);
    expect(yearSentence(told, POUNDS)).toMatch(
      /nothing to judge the reserve by yet|too few units to judge it by/,
    );
  });

  test('says that claims without a recorded cost may still raise it', () => {
    expect(yearSentence(year(1, 0, 1, 0, 2), POUNDS)).toBe(
      'In the last year 1 unit was sent back with a reserve of £1.00, £2.08 at most, and £0.00 went on claims opened in it, of these and of earlier units. 2 claims have no recorded cost yet. Cover as long as the term ended for 1 unit in it: their own claims cost £0.00, beside their reserve of £1.00: too few units to judge it by. 2 claims have no recorded cost yet.',
    );
  });

  test('is judged by covers about as long as its term', () => {
    const cover = (days: number, units: number) => ({ days, units, spentMinor: units * 10, uncosted: 1 });
    const covers = [cover(90, 1), cover(181, 2), cover(184, 4), cover(366, 8)];
    expect(endedOfTerm(covers, 182)).toEqual({ units: 6, spentMinor: 60, uncosted: 2 });
    expect(endedOfTerm(covers, 365)).toEqual({ units: 8, spentMinor: 80, uncosted: 1 });
    const within = [174, 175, 189, 190].map((days) => endedOfTerm([cover(days, 1)], 182).units);
    expect(within).toEqual([0, 1, 1, 0]);
    expect(endedOfTerm(covers, 30)).toEqual({ units: 0, spentMinor: 0, uncosted: 0 });
  });
});
