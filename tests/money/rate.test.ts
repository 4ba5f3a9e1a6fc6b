import { expect, test } from 'vitest';
import { rateInWords, showRate, taxInWords } from '@/lib/money/rate';

test.each([
  [2000, '20%'],
  [550, '5.5%'],
  [770, '7.7%'],
  [1225, '12.25%'],
  [5, '0.05%'],
  [0, '0%'],
])('a rate of %i hundredths of a percent is %s', (rateBps, text) => {
  expect(showRate(rateBps)).toBe(text);
});

test.each([
  ['S', 2000, 'VAT 20%', '20%'],
  ['Z', 0, 'VAT 0%, zero rate', '0%'],
  ['E', 0, 'Exempt from VAT', 'exempt'],
  ['O', 0, 'Outside VAT', 'outside'],
] as const)('category %s at %i is %s', (category, rateBps, inWords, besideItsAmount) => {
  expect(taxInWords({ category, rateBps }, 'VAT')).toBe(inWords);
  expect(rateInWords({ category, rateBps })).toBe(besideItsAmount);
});
