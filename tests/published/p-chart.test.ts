import { describe, expect, test } from 'vitest';
import { pChart } from '@/lib/returns/rules/p-chart';

// Thirty samples of 50 cans: Montgomery, Introduction to Statistical Quality Control (1991) pp. 152-155, as in the data of
// the R package qcc; the method and the mean by NIST/SEMATECH e-Handbook 6.3.3.2.
const CANS = [
  12, 15, 8, 10, 4, 7, 16, 9, 14, 10, 5, 6, 17, 12, 22, 8, 10, 5, 13, 11, 20, 18, 24, 15, 9, 12, 7, 13, 9, 6,
].map((returned, sample) => ({ month: String(sample + 1), units: 50, returned }));

const outOf = (samples: typeof CANS) =>
  pChart(samples)
    ?.points.filter((point) => point.out)
    .map(({ month, out }) => `${month} ${out}`);

describe('the chart of shares', () => {
  test('has the published mean and limits, and calls out samples 15 and 23', () => {
    const chart = pChart(CANS);
    expect(chart?.centre).toBeCloseTo(0.231333, 6);
    expect(chart?.points[0]?.high).toBeCloseTo(0.410239, 6);
    expect(chart?.points[0]?.low).toBeCloseTo(0.052428, 6);
    expect(outOf(CANS)).toEqual(['15 above', '23 above']);
  });

  test('has the published limits without these two, and then calls out sample 21', () => {
    const rest = CANS.filter(({ month }) => month !== '15' && month !== '23');
    const chart = pChart(rest);
    expect(chart?.centre).toBeCloseTo(0.215, 6);
    expect(chart?.points[0]?.high).toBeCloseTo(0.389297, 6);
    expect(chart?.points[0]?.low).toBeCloseTo(0.040703, 6);
    expect(outOf(rest)).toEqual(['21 above']);
  });

  test('ends its limits at nought, and leaves a month without units empty', () => {
    const chart = pChart([
      { month: '2026-01', units: 40, returned: 1 },
      { month: '2026-02', units: 0, returned: 0 },
      { month: '2026-03', units: 60, returned: 2 },
    ]);
    expect(chart?.points.map(({ low }) => low)).toEqual([0, null, 0]);
    expect(chart?.points[1]).toMatchObject({ share: null, interval: null, out: null });
  });

  // 1 of 2 where 3 % is usual is past three standard errors, yet chance does as much in 6 % of such months
  // (1 - 0.97^2, by hand); 3 of 3 comes by chance once in 37,000.
  test('judges a small month by exact chance', () => {
    const usual = Array.from({ length: 20 }, (_, place) => ({ month: `${place}`, units: 200, returned: 6 }));
    const chart = pChart([
      ...usual,
      { month: 'a', units: 2, returned: 1 },
      { month: 'b', units: 3, returned: 3 },
    ]);
    const [a, b] = chart?.points.slice(-2) ?? [];
    expect(a).toMatchObject({ isSmall: true, out: null });
    expect((a?.share ?? 0) > (a?.high ?? 1)).toBe(true);
    expect(b).toMatchObject({ isSmall: true, out: 'above' });
    expect(chart?.points[0]?.isSmall).toBe(false);
  });

  // Computed by hand: 402 of 4,200 is 0.095714; three times the root of 0.095714 x 0.904286 / 200 is 0.062409.
  test('calls out a month that is better than chance', () => {
    const usual = Array.from({ length: 20 }, (_, place) => ({ month: `${place}`, units: 200, returned: 20 }));
    const chart = pChart([...usual, { month: 'better', units: 200, returned: 2 }]);
    const last = chart?.points.at(-1);
    expect(chart?.centre).toBeCloseTo(0.095714, 6);
    expect(last?.low).toBeCloseTo(0.033305, 6);
    expect(last).toMatchObject({ isSmall: false, out: 'below' });
    expect(chart?.points.filter(({ out }) => out !== null)).toHaveLength(1);
  });

  test('of no units is none, and of broken counts refused', () => {
    expect(pChart([])).toBeNull();
    expect(() => pChart([{ month: 'a', units: 2, returned: 3 }])).toThrow(RangeError);
  });
});
