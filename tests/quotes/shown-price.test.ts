import { describe, expect, it } from 'vitest';
import { COVERED_TOGETHER, type QuoteLine, revisionTotals } from '@/lib/quotes/rules/lines';
import { comparedLines, shownPrice, sumRows } from '@/lib/quotes/rules/shown-price';

const line = (description: string, amount: number, more: Partial<QuoteLine> = {}): QuoteLine => ({
  kind: 'labour',
  description,
  amount,
  category: 'S',
  rateBps: 2000,
  ...more,
});
const revision = (lines: QuoteLine[], isGross: boolean) => {
  const { net, tax, gross } = revisionTotals(lines, isGross);
  return { lines, isGross, netMinor: net, taxMinor: tax, grossMinor: gross };
};
const WORK = line('Socket replaced', 4500);
const PADS = line('Pads rebuilt', 2400);

describe('the sums under the lines of a price', () => {
  it.each([true, false])('add up to the total, with tax in the lines: %s', (isGross) => {
    const price = shownPrice(revision([WORK, PADS], isGross), 'VAT');
    const rows = sumRows(price);
    const lines = price.lines.reduce((sum, { amount }) => sum + amount, 0);
    const tax = rows.find(({ sum, place }) => sum === 'tax' && place === 'before') ? price.tax : 0;
    expect(lines + tax).toBe(price[rows.find(({ place }) => place === 'total')?.sum ?? 'net']);
  });

  it('name what the lines leave out, and the tax where they leave out nothing', () => {
    const words = (isGross: boolean) =>
      sumRows(shownPrice(revision([WORK], isGross), 'VAT')).map(({ words }) => words);
    expect(words(false)).toEqual(['Together, before tax', 'VAT', 'Total with tax']);
    expect(words(true)).toEqual(['Total with tax', 'VAT in it']);
  });

  it('name no tax where none is charged', () => {
    const outside = line('Socket replaced', 4500, { category: 'O', rateBps: 0 });
    expect(sumRows(shownPrice(revision([outside], true), 'VAT'))).toEqual([
      { sum: 'gross', words: 'Total', place: 'total' },
    ]);
  });
});

describe('an agreed price and a new one side by side', () => {
  it('have every line, also those that stay the same, so that both add up', () => {
    const rows = comparedLines([WORK], [WORK, PADS]);
    expect(rows).toEqual([
      { description: 'Socket replaced', was: 4500, now: 4500 },
      { description: 'Pads rebuilt', was: null, now: 2400 },
    ]);
    expect(rows.reduce((sum, { now }) => sum + (now ?? 0), 0)).toBe(6900);
  });

  it('show what a certificate covers first, and that it comes to nothing', () => {
    const cover = line('Covered by certificate W-4K7Q-X29D', -4500, { kind: 'cover' });
    expect(
      comparedLines([WORK, cover], [WORK, cover, PADS]).map(({ description, now }) => [description, now]),
    ).toEqual([
      ['Socket replaced', 4500],
      ['Covered by certificate W-4K7Q-X29D', -4500],
      [COVERED_TOGETHER, 0],
      ['Pads rebuilt', 2400],
    ]);
  });
});
