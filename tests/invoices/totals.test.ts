import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { balance, balanceOf, isPriceOpen } from '@/lib/invoices/rules/balance';
import { invoiceNumber, isInvoiceNumber } from '@/lib/invoices/rules/number';
import { invoiceTotals } from '@/lib/invoices/rules/totals';
import { roundedShare } from '@/lib/money/amount';
import { totals } from '@/lib/money/tax';

const line = fc
  .record({
    amount: fc.integer({ min: -500_000, max: 2_000_000 }),
    taxed: fc.constantFrom(
      { category: 'S' as const, rateBps: 2000 },
      { category: 'S' as const, rateBps: 500 },
      { category: 'S' as const, rateBps: 1900 },
      { category: 'S' as const, rateBps: 2550 },
      { category: 'Z' as const, rateBps: 0 },
      { category: 'E' as const, rateBps: 0 },
      { category: 'O' as const, rateBps: 0 },
    ),
  })
  .map(({ amount, taxed }) => ({ amount, ...taxed }));
const lineSet = fc.array(line, { minLength: 1, maxLength: 12 });
const sum = (amounts: readonly number[]) => amounts.reduce((all, each) => all + each, 0);

describe('the sums of an invoice', () => {
  it('obey BR-CO-10, 14, 15, 16 and 17 and BR-S-08 for every set of lines, with tax or without', () => {
    fc.assert(
      fc.property(lineSet, fc.boolean(), (lines, isGross) => {
        const found = invoiceTotals(lines, isGross);
        expect(sum(found.lines.map((each) => each.net))).toBe(found.net);
        expect(sum(found.breakdown.map((part) => part.tax))).toBe(found.tax);
        expect(found.net + found.tax + found.rounding).toBe(found.payable);
        for (const part of found.breakdown) {
          const own = found.lines.filter(
            (each) => each.category === part.category && each.rateBps === part.rateBps,
          );
          expect(sum(own.map((each) => each.net))).toBe(part.base);
          expect(part.tax).toBe(roundedShare(part.base, part.rateBps, 10_000));
        }
      }),
      { numRuns: 2000 },
    );
  });

  it('come to exactly the price that was agreed', () => {
    fc.assert(
      fc.property(lineSet, fc.boolean(), (lines, isGross) => {
        const found = invoiceTotals(lines, isGross);
        expect(found.payable).toBe(totals(lines, isGross ? 'gross' : 'net').gross);
        if (isGross) expect(found.payable).toBe(sum(lines.map((each) => each.amount)));
        else expect(found.rounding).toBe(0);
      }),
      { numRuns: 1000 },
    );
  });

  it('need no rounding where some base gives the gross, and one minor unit at most for each rate', () => {
    let rounded = 0;
    for (let gross = 1; gross <= 6000; gross += 1) {
      const found = invoiceTotals([{ amount: gross, category: 'S', rateBps: 2000 }], true);
      expect(Math.abs(found.rounding)).toBeLessThanOrEqual(1);
      const hasBase = [-1, 0, 1].some(
        (step) => found.net + step + roundedShare(found.net + step, 2000, 10_000) === gross,
      );
      expect(found.rounding === 0).toBe(hasBase);
      if (found.rounding !== 0) rounded += 1;
    }
    expect(rounded).toBe(1000);
  });

  it('put a line’s net amount within one minor unit of its own share', () => {
    fc.assert(
      fc.property(lineSet, (lines) => {
        for (const each of invoiceTotals(lines, true).lines) {
          const own = (each.amount * 10_000) / (10_000 + each.rateBps);
          expect(Math.abs(each.net - own)).toBeLessThanOrEqual(1);
        }
      }),
    );
  });

  it('work through an example: 72.00 and 24.99 with 20 % in them', () => {
    const found = invoiceTotals(
      [
        { amount: 7200, category: 'S', rateBps: 2000 },
        { amount: 2499, category: 'S', rateBps: 2000 },
      ],
      true,
    );
    expect(found).toMatchObject({ net: 8082, tax: 1616, rounding: 1, payable: 9699 });
    expect(found.lines.map((each) => each.net)).toEqual([6000, 2082]);
  });

  // By hand at 20 %: 1.01 has 84.17 in it and 1.04 has 86.67; the unit that flooring leaves over goes to the greater loss.
  it.each([
    [
      [101, 104],
      [84, 87],
    ],
    [
      [104, 101],
      [87, 84],
    ],
    [
      [101, 104, 104],
      [84, 87, 86],
    ],
  ])('share %j out as %j, the earlier of two that lose as much first', (amounts, nets) => {
    const lines = amounts.map((amount) => ({ amount, category: 'S' as const, rateBps: 2000 }));
    expect(invoiceTotals(lines, true).lines.map(({ net }) => net)).toEqual(nets);
  });

  it('keep two equal lines apart', () => {
    const twice = { amount: 1, category: 'S', rateBps: 2000 } as const;
    const found = invoiceTotals([twice, twice, twice], true);
    expect(sum(found.lines.map((each) => each.net))).toBe(found.net);
  });
});

describe('what is owed', () => {
  it('is the total less the payments, before and after invoices', () => {
    const amounts = fc.array(fc.integer({ min: 0, max: 1_000_000 }), { maxLength: 5 });
    const payments = fc.array(fc.integer({ min: -500_000, max: 1_000_000 }), { maxLength: 5 });
    fc.assert(
      fc.property(fc.nat(1_000_000), amounts, amounts, payments, (agreedGross, invoices, credits, paid) => {
        const found = balance({ agreedGross, invoices, credits, payments: paid });
        expect(found.paid + found.owed).toBe(found.total);
        expect(found.paid).toBe(sum(paid));
        expect(found.total).toBe(invoices.length > 0 ? sum(invoices) - sum(credits) : agreedGross);
      }),
    );
  });

  it('is below zero after a credit note on what was paid', () => {
    expect(balance({ agreedGross: 7200, invoices: [7200], credits: [1000], payments: [7200] })).toEqual({
      total: 6200,
      paid: 7200,
      owed: -1000,
    });
  });
});

describe('what is owed on a job', () => {
  const agreed = { state: 'accepted', grossMinor: 7200, revision: 1, decidedBy: 'customer' };
  const offered = { state: 'sent', grossMinor: 9900, revision: 2, decidedBy: null };
  const job = { stage: 'on-bench', quotes: [{ revisions: [agreed, offered] }], invoices: [], payments: [] };

  it('is the price that was agreed to, not one that waits for an answer', () => {
    expect(balanceOf(job)).toEqual({ total: 7200, paid: 0, owed: 7200 });
  });

  it('is nothing before a price was agreed to, and on a booking that was cancelled', () => {
    expect(balanceOf({ ...job, quotes: [] })).toEqual({ total: 0, paid: 0, owed: 0 });
    expect(balanceOf({ ...job, quotes: [{ revisions: [offered] }] }).total).toBe(0);
    expect(balanceOf({ ...job, stage: 'cancelled' }).total).toBe(0);
  });

  it('is what was invoiced less what was credited and paid; postage that was paid back is apart', () => {
    const invoices = [
      { kind: 'invoice', payableMinor: 7200 },
      { kind: 'credit-note', payableMinor: 1000 },
    ];
    const payments = [
      { amountMinor: 5000, purpose: 'price' },
      { amountMinor: -640, purpose: 'claim-postage' },
    ];
    expect(balanceOf({ ...job, invoices, payments })).toEqual({ total: 6200, paid: 5000, owed: 1200 });
  });

  it.each([
    ['is open where staff wrote the first price', 1, null, true],
    ['is agreed to by its customer', 1, 'customer', false],
    ['follows from a certificate', 1, 'certificate', false],
    ['follows from the terms after another', 2, null, false],
  ])('its price %s', (_name, revision, decidedBy, isOpen) => {
    const quotes = [{ revisions: [{ state: 'accepted', revision, decidedBy }] }];
    expect(isPriceOpen({ stage: 'assessing', quotes })).toBe(isOpen);
    expect(isPriceOpen({ stage: 'cancelled', quotes })).toBe(false);
  });

  it('has no open price where none stands', () => {
    expect(isPriceOpen({ stage: 'booked', quotes: [{ revisions: [offered] }] })).toBe(false);
  });
});

describe('the number', () => {
  it('has the year and the place in it', () => {
    expect(invoiceNumber(2026, 7)).toBe('2026-00007');
    expect(invoiceNumber(2026, 123_456)).toBe('2026-123456');
    expect(isInvoiceNumber('2026-00007')).toBe(true);
    expect(isInvoiceNumber('2026-7')).toBe(false);
    expect(() => invoiceNumber(2026, 0)).toThrow(RangeError);
  });
});
