import { describe, expect, it } from 'vitest';
import { type Issued, standingPrice } from '@/lib/invoices/rules/standing-price';

type Line = { position: number; amount: number; net: number };
type Part = Issued<Line>['breakdown'][number];

const at20 = (base: number, tax: number): Part => ({ category: 'S', rateBps: 2000, base, tax });
const at5 = (base: number, tax: number): Part => ({ category: 'S', rateBps: 500, base, tax });
const line = (position: number, amount: number, net: number): Line => ({ position, amount, net });

/** A paper whose sums are its lines' and its breakdown's; what is over is its rounding. */
function paper(
  id: string,
  o: {
    corrects?: string;
    isGross?: boolean;
    lines: readonly Line[];
    breakdown: readonly Part[];
    payable: number;
  },
): Issued<Line> {
  const net = o.breakdown.reduce((sum, part) => sum + part.base, 0);
  const tax = o.breakdown.reduce((sum, part) => sum + part.tax, 0);
  return {
    id,
    kind: o.corrects === undefined ? 'invoice' : 'credit-note',
    correctsId: o.corrects ?? null,
    isGross: o.isGross ?? true,
    lines: o.lines,
    breakdown: o.breakdown,
    net,
    tax,
    rounding: o.payable - net - tax,
    payable: o.payable,
  };
}

// Sums worked out by hand; EN 16931 BR-CO-17 for the tax of each rate.
describe('what stands of a job’s price', () => {
  it('is the new invoice alone once all of the first is credited', () => {
    const first = { lines: [line(0, 7200, 6000)], breakdown: [at20(6000, 1200)], payable: 7200 };
    const second = { lines: [line(0, 9600, 8000)], breakdown: [at20(8000, 1600)], payable: 9600 };
    const papers = [paper('a', first), paper('a1', { ...first, corrects: 'a' }), paper('b', second)];
    expect(standingPrice(papers)).toEqual({
      mode: 'gross',
      lines: [line(0, 9600, 8000)],
      breakdown: [at20(8000, 1600)],
      net: 8000,
      tax: 1600,
      rounding: 0,
      payable: 9600,
      credited: 7200,
    });
  });

  it('is told before tax where one of two invoices is', () => {
    const withTax = { lines: [line(0, 7200, 6000)], breakdown: [at20(6000, 1200)], payable: 7200 };
    const beforeTax = { lines: [line(0, 2000, 2000)], breakdown: [at20(2000, 400)], payable: 2400 };
    const papers = [paper('a', withTax), paper('b', { ...beforeTax, isGross: false })];
    expect(standingPrice(papers)).toMatchObject({
      mode: 'net',
      lines: [{ amount: 6000 }, { amount: 2000 }],
      breakdown: [at20(8000, 1600)],
      payable: 9600,
      credited: 0,
    });
  });

  it('has neither line nor rate of what was credited as a whole', () => {
    const papers = [
      paper('a', {
        lines: [line(0, 7200, 6000), line(1, 2100, 2000)],
        breakdown: [at20(6000, 1200), at5(2000, 100)],
        payable: 9300,
      }),
      paper('a1', {
        corrects: 'a',
        lines: [line(1, 2100, 2000)],
        breakdown: [at5(2000, 100)],
        payable: 2100,
      }),
    ];
    expect(standingPrice(papers)).toMatchObject({
      lines: [line(0, 7200, 6000)],
      breakdown: [at20(6000, 1200)],
      net: 6000,
      tax: 1200,
      payable: 7200,
      credited: 2100,
    });
  });

  it('keeps the cent that was rounded: 14.00 at 19 % less 4.00 is 8.40 + 1.59 + 0.01', () => {
    const at19 = (base: number, tax: number): Part => ({ category: 'S', rateBps: 1900, base, tax });
    const papers = [
      paper('a', { lines: [line(0, 1400, 1176)], breakdown: [at19(1176, 223)], payable: 1400 }),
      paper('a1', { corrects: 'a', lines: [line(0, 400, 336)], breakdown: [at19(336, 64)], payable: 400 }),
    ];
    expect(standingPrice(papers)).toMatchObject({
      lines: [{ amount: 1000 }],
      breakdown: [at19(840, 159)],
      net: 840,
      tax: 159,
      rounding: 1,
      payable: 1000,
      credited: 400,
    });
  });
});
