import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { balance } from '@/lib/invoices/rules/balance';
import { creditTotals, leftToCredit } from '@/lib/invoices/rules/credit';
import { type InvoiceTotals, invoiceTotals } from '@/lib/invoices/rules/totals';
import { decimalText, readMoney, roundedShare } from '@/lib/money/amount';
import type { MoneyLine } from '@/lib/money/tax';

// ISO 4217: no, two and three decimals.
const currency = fc.constantFrom('JPY', 'EUR', 'GBP', 'KWD');
const RATES: readonly Pick<MoneyLine, 'category' | 'rateBps'>[] = [
  { category: 'S', rateBps: 2000 },
  { category: 'S', rateBps: 700 },
  { category: 'S', rateBps: 2525 },
  { category: 'Z', rateBps: 0 },
  { category: 'E', rateBps: 0 },
  { category: 'O', rateBps: 0 },
];
const line = fc
  .record({ amount: fc.integer({ min: 0, max: 3_000_000 }), rate: fc.nat(RATES.length - 1) })
  .map(({ amount, rate }) => ({ amount, ...(RATES[rate] ?? { category: 'S' as const, rateBps: 2000 }) }));

type Numbered = MoneyLine & { position: number };

/** Lines of work and parts, with a discount of some percent on each rate among them. */
const priced = fc
  .record({ lines: fc.array(line, { minLength: 1, maxLength: 8 }), percent: fc.integer({ min: 0, max: 60 }) })
  .map(({ lines, percent }): Numbered[] => {
    const discounts = RATES.flatMap((rate) => {
      const sum = lines
        .filter((each) => each.category === rate.category && each.rateBps === rate.rateBps)
        .reduce((all, each) => all + each.amount, 0);
      const off = roundedShare(sum, percent, 100);
      return off === 0 ? [] : [{ ...rate, amount: -off }];
    });
    return [...lines, ...discounts].map((each, position) => ({ ...each, position }));
  });

const sum = (amounts: readonly number[]) => amounts.reduce((all, each) => all + each, 0);

function expectSound(found: InvoiceTotals<Numbered>): void {
  expect(sum(found.lines.map((each) => each.net))).toBe(found.net); // BR-CO-10
  expect(sum(found.breakdown.map((part) => part.base))).toBe(found.net); // BR-S/Z/E/O-08
  expect(sum(found.breakdown.map((part) => part.tax))).toBe(found.tax); // BR-CO-14
  for (const part of found.breakdown) expect(part.tax).toBe(roundedShare(part.base, part.rateBps, 10_000)); // BR-CO-17
  expect(found.net + found.tax + found.rounding).toBe(found.payable); // BR-CO-15, BR-CO-16
}

describe('no cent is lost', () => {
  it('from the agreed price through the invoice, credit notes and payments, in any currency', () => {
    let notes = 0;
    fc.assert(
      fc.property(
        priced,
        fc.boolean(),
        currency,
        fc.array(fc.integer({ min: 0, max: 100 }), { maxLength: 4 }),
        fc.array(fc.integer({ min: -1_000_000, max: 4_000_000 }), { maxLength: 4 }),
        (lines, isGross, code, percents, payments) => {
          const invoice = { ...invoiceTotals(lines, isGross), isGross };
          expectSound(invoice);
          const credits: InvoiceTotals<Numbered>[] = [];
          for (const percent of percents) {
            const left = leftToCredit(invoice, credits);
            const chosen = new Map(
              [...left.byPosition].map(([position, amount]) => [
                position,
                percent === 100 ? amount : Math.trunc((amount * percent) / 100),
              ]),
            );
            const credit = creditTotals(invoice, credits, chosen);
            if (!credit.ok) continue;
            notes += 1;
            expectSound(credit.totals);
            credits.push(credit.totals);
            const after = leftToCredit(invoice, credits);
            expect(after.payable).toBe(left.payable - credit.totals.payable);
            expect(after.payable).toBeGreaterThanOrEqual(0);
            if (percent === 100) expect(after.payable).toBe(0);
          }
          const found = balance({
            agreedGross: invoice.payable,
            invoices: [invoice.payable],
            credits: credits.map((credit) => credit.payable),
            payments,
          });
          expect(sum(payments) + found.owed).toBe(found.total);
          expect(found.total).toBe(invoice.payable - sum(credits.map((credit) => credit.payable)));
          for (const minor of [invoice.net, invoice.tax, invoice.payable, found.owed])
            expect(readMoney(decimalText(minor, code), code)).toEqual({ ok: true, minor });
        },
      ),
      { numRuns: 600 },
    );
    expect(notes).toBeGreaterThan(500);
  });
});
