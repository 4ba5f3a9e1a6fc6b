import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type QuoteLine, revisionTotals } from '@/lib/quotes/rules/lines';
import { linesKept } from '@/lib/quotes/rules/tax-mode';

const FEE: QuoteLine = {
  kind: 'inspection-fee',
  description: 'Inspection',
  amount: 1800,
  category: 'S',
  rateBps: 2000,
};

// The tax inside and on top of an amount: EN 16931 BR-CO-17, as lib/money/tax.ts has it; the sums [computed].
describe('lines of a price that was kept the other way', () => {
  it.each([
    ['with tax', true, 1800, 1500],
    ['before tax', false, 1500, 1800],
  ])('come to what they did: kept %s', (_name, isGross, amount, amountNow) => {
    const before = [{ ...FEE, amount }];
    const [now] = linesKept(before, { isGross, asGross: !isGross });
    expect(now?.amount).toBe(amountNow);
    expect(revisionTotals(before, isGross).gross).toBe(1800);
    expect(revisionTotals(now ? [now] : [], !isGross).gross).toBe(1800);
    expect(linesKept(before, { isGross, asGross: isGross })).toEqual(before);
  });

  it('cost the customer what they did, to one minor unit, and what takes a line off still does', () => {
    const amount = fc.integer({ min: -1_000_000, max: 1_000_000 });
    fc.assert(
      fc.property(
        amount,
        fc.constantFrom(0, 500, 700, 1900, 2000),
        fc.boolean(),
        (each, rateBps, isGross) => {
          const line = { ...FEE, amount: each, rateBps };
          const off = { ...line, amount: -each };
          const now = linesKept([line, off], { isGross, asGross: !isGross });
          const gross = (lines: readonly QuoteLine[], with_: boolean) => revisionTotals(lines, with_).gross;
          expect(Math.abs(gross(now.slice(0, 1), !isGross) - gross([line], isGross))).toBeLessThanOrEqual(1);
          expect(gross(now, !isGross)).toBe(0);
        },
      ),
    );
  });
});
