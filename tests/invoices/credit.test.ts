import { describe, expect, it } from 'vitest';
import { creditTotals } from '@/lib/invoices/rules/credit';

const taxed = { category: 'S', rateBps: 2000 } as const;
const work = { position: 0, amount: 7200, ...taxed };
const invoice = {
  isGross: true,
  lines: [work, { position: 1, amount: 2400, ...taxed }, { position: 2, amount: -600, ...taxed }],
  payable: 9000,
};
const chosen = (amounts: Record<number, number>) =>
  new Map(Object.entries(amounts).map(([position, amount]) => [Number(position), amount]));

describe('a credit note of work 72.00, a part 24.00 and 6.00 off', () => {
  it.each([
    ['a charge against the sign of its line', { 0: 7200, 1: -600 }, 1],
    ['a discount given twice', { 2: 600 }, 2],
    ['more than a line', { 0: 7201 }, 0],
    ['more than a discount, which would be a charge', { 0: 7200, 2: -601 }, 2],
    ['a line that is not there', { 9: 1 }, 9],
    ['more than the invoice as a whole, its discount left out', { 0: 7200, 1: 2400 }, null],
  ])('is refused as too much: %s', (_, amounts, position) => {
    expect(creditTotals(invoice, [], chosen(amounts))).toEqual({ ok: false, reason: 'too-much', position });
  });

  it.each([
    ['no line', {}],
    ['a line at nothing', { 0: 0 }],
    ['the discount alone', { 2: -600 }],
  ])('is refused as nothing: %s', (_, amounts) => {
    const nothing = { ok: false, reason: 'nothing', position: null };
    expect(creditTotals(invoice, [], chosen(amounts))).toEqual(nothing);
  });

  it('may take all of it, discount and all: 90.00 is 75.00 and 15.00', () => {
    expect(creditTotals(invoice, [], chosen({ 0: 7200, 1: 2400, 2: -600 }))).toMatchObject({
      ok: true,
      totals: { net: 7500, tax: 1500, rounding: 0, payable: 9000 },
    });
  });
});

describe('a second credit note on work 72.00, of which 10.00 is credited', () => {
  const credited = [{ lines: [{ position: 0, amount: 1000 }], payable: 1000 }];
  const again = (amount: number) =>
    creditTotals({ isGross: true, lines: [work], payable: 7200 }, credited, chosen({ 0: amount }));

  it('takes what is left, and not a penny more', () => {
    expect(again(6200)).toMatchObject({ ok: true, totals: { payable: 6200 } });
    expect(again(6201)).toEqual({ ok: false, reason: 'too-much', position: 0 });
  });
});
