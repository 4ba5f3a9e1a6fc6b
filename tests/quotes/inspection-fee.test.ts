import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatMoney } from '@/lib/money/amount';
import {
  feesAfterNo,
  feesWords,
  inspectionFeeOf,
  laterNoWords,
  linesAfterNo,
} from '@/lib/quotes/rules/after-no';
import { FEE_TAKEN_OFF, withInspectionFee } from '@/lib/quotes/rules/inspection-fee';
import { type QuoteLine, revisionTotals } from '@/lib/quotes/rules/lines';

const WORK: QuoteLine = {
  kind: 'labour',
  description: 'Display cable laid anew',
  amount: 7200,
  category: 'S',
  rateBps: 2000,
};
const FEE: QuoteLine = { ...WORK, kind: 'inspection-fee', description: 'Inspection', amount: 1800 };
const OFF: QuoteLine = { ...FEE, description: FEE_TAKEN_OFF, amount: -1800 };
/** A part at a reduced rate beside the standard one. */
const PART: QuoteLine = { ...WORK, kind: 'part', description: 'Cable', amount: 1050, rateBps: 500 };

// How the fee is shown is the trade's own way (common practice, no source); the sums follow EN 16931 BR-CO-17.
describe('the inspection fee of a changed price', () => {
  it('is shown and taken off where the repair goes ahead', () => {
    const lines = withInspectionFee([{ ...WORK, amount: 9000 }], [WORK, FEE], true);
    expect(lines).toEqual([{ ...WORK, amount: 9000 }, FEE, OFF]);
    expect(revisionTotals(lines, true).gross).toBe(9000);
  });

  it('stays where the workshop does not take it off', () => {
    const lines = withInspectionFee([WORK], [WORK, FEE], false);
    expect(lines).toEqual([WORK, FEE]);
    expect(revisionTotals(lines, true).gross).toBe(9000);
  });

  it('is put in once, whether the price names it, takes it off, or was changed before', () => {
    expect(withInspectionFee([WORK, FEE], [WORK, FEE], true)).toEqual([WORK, FEE, OFF]);
    expect(withInspectionFee([WORK, FEE, OFF], [WORK, FEE], true)).toEqual([WORK, FEE, OFF]);
    const once = withInspectionFee([WORK], [WORK, FEE], true);
    expect(withInspectionFee(once, once, true)).toEqual(once);
    expect(withInspectionFee([WORK], once, true)).toEqual(once);
  });

  it('is not invented where none was agreed to', () => {
    expect(withInspectionFee([WORK, PART], [WORK], true)).toEqual([WORK, PART]);
  });

  it('adds up with two rates of tax', () => {
    const { gross, breakdown } = revisionTotals(withInspectionFee([WORK, PART], [WORK, FEE], true), true);
    expect(gross).toBe(8250);
    // 72.00 with 20 % in it: 12.00 tax. 10.50 with 5 % in it: 0.50 tax.
    expect(breakdown).toEqual([
      { category: 'S', rateBps: 2000, base: 6000, tax: 1200 },
      { category: 'S', rateBps: 500, base: 1000, tax: 50 },
    ]);
  });

  it('never changes what a price that goes ahead comes to, with tax or without', () => {
    const amount = fc.integer({ min: 1, max: 1_000_000 });
    const rate = fc.constantFrom(0, 500, 700, 1900, 2000);
    fc.assert(
      fc.property(amount, amount, rate, rate, fc.boolean(), (work, fee, workRate, feeRate, isGross) => {
        const lines = [{ ...WORK, amount: work, rateBps: workRate }];
        const agreed = [...lines, { ...FEE, amount: fee, rateBps: feeRate }];
        expect(revisionTotals(withInspectionFee(lines, agreed, true), isGross).gross).toBe(
          revisionTotals(lines, isGross).gross,
        );
      }),
    );
  });
});

describe('what a no costs', () => {
  it('is the return fee alone where no inspection was agreed to', () => {
    const lines = linesAfterNo({ agreed: [WORK], isGross: true, returnFee: 960 });
    expect(lines.map(({ kind, amount }) => [kind, amount])).toEqual([['return-fee', 960]]);
    expect(feesAfterNo(lines)).toEqual({ inspectionFee: 0, returnFee: 960 });
  });

  it('is the inspection fee and the return fee, as two lines', () => {
    const lines = linesAfterNo({ agreed: [WORK, FEE], isGross: true, returnFee: 960 });
    expect(lines.map(({ kind, amount }) => [kind, amount])).toEqual([
      ['inspection-fee', 1800],
      ['return-fee', 960],
    ]);
    expect(revisionTotals(lines, true).gross).toBe(2760);
  });

  it('owes the fee again where an earlier price had taken it off', () => {
    expect(feesAfterNo(linesAfterNo({ agreed: [WORK, FEE, OFF], isGross: true, returnFee: 960 }))).toEqual({
      inspectionFee: 1800,
      returnFee: 960,
    });
  });

  it('puts the tax in where prices are kept without it', () => {
    const agreed = [
      { ...WORK, amount: 6000 },
      { ...FEE, amount: 1500, rateBps: 500 },
    ];
    const lines = linesAfterNo({ agreed, isGross: false, returnFee: 960 });
    const { gross, breakdown } = revisionTotals(lines, true);
    expect(gross).toBe(1575 + 960);
    expect(inspectionFeeOf(agreed, false)).toBe(1575);
    expect(breakdown).toEqual([
      { category: 'S', rateBps: 2000, base: 800, tax: 160 },
      { category: 'S', rateBps: 500, base: 1500, tax: 75 },
    ]);
  });

  it('says that a claim goes back free', () => {
    const lines = linesAfterNo({
      agreed: [WORK, { ...WORK, kind: 'cover', amount: -7200 }],
      isGross: true,
      returnFee: 0,
    });
    expect(lines.map(({ kind, amount }) => [kind, amount])).toEqual([['return-fee', 0]]);
  });

  it.each([
    [0, 0, 'free of charge (£0.00)', 'the unit comes back free of charge (£0.00).'],
    [
      0,
      960,
      'the return fee of £9.60, and nothing else',
      'you pay the return fee of £9.60, and nothing else.',
    ],
    [
      1800,
      0,
      'the inspection fee of £18.00, and nothing else',
      'you pay the inspection fee of £18.00, and nothing else.',
    ],
    [
      1800,
      960,
      'the inspection fee of £18.00 and the return fee of £9.60, £27.60 together, and nothing else',
      'you pay the inspection fee of £18.00 and the return fee of £9.60, £27.60 together, and nothing else.',
    ],
  ])('is said in words: inspection %i, return %i', (inspectionFee, returnFee, owed, later) => {
    const money = (minor: number) => formatMoney(minor, 'GBP', 'en-GB');
    expect(feesWords({ inspectionFee, returnFee }, money)).toBe(owed);
    expect(laterNoWords({ inspectionFee, returnFee }, money)).toBe(`If you then say no, ${later}`);
  });

  it('refuses a price that has no lines', () => {
    expect(() => linesAfterNo({ agreed: [], isGross: true, returnFee: 960 })).toThrow(RangeError);
  });
});
