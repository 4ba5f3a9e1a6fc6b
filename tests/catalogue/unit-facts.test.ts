import { expect, test } from 'vitest';
import { percentText, readPercent } from '@/lib/catalogue/rules/percent';
import { missingSide, sizeWords } from '@/lib/catalogue/rules/size';
import { readTariffNumber } from '@/lib/catalogue/rules/tariff-number';

const unknown = { lengthMm: 0, widthMm: 0, heightMm: 0, weightGrams: 0 };
const gull = { lengthMm: 96, widthMm: 52, heightMm: 21, weightGrams: 120 };

test.each([
  ['both', gull, '96 × 52 × 21 mm, 120 g'],
  ['a kilogram', { ...unknown, weightGrams: 1000 }, '1 kg'],
  ['what is rounded', { ...unknown, weightGrams: 2404 }, '2.4 kg'],
  ['half a size', { ...gull, widthMm: 0 }, '120 g'],
  ['nothing', unknown, null],
])('size and weight: %s', (_, unit, words) => {
  expect(sizeWords(unit)).toBe(words);
});

test('a size is whole or not known', () => {
  expect(missingSide(gull)).toBeNull();
  expect(missingSide(unknown)).toBeNull();
  expect(missingSide({ ...gull, heightMm: 0 })).toBe('heightMm');
  expect(missingSide({ lengthMm: 0, widthMm: 0, heightMm: 5 })).toBe('lengthMm');
});

// From memory: 8519 81 is the Harmonized System's heading for sound recorders on semiconductor, magnetic or optical media.
test.each([
  ['8519.81', '851981'],
  ['8519 81 00 90', '8519810090'],
  ['', ''],
  ['8519', null],
  ['8519-81', null],
  ['1234567890123', null],
])('the tariff number "%s" is %j', (text, digits) => {
  expect(readTariffNumber(text)).toBe(digits);
});

test.each([
  ['20', 2000],
  ['5.5', 550],
  ['5,55', 555],
  ['0', 0],
  ['100', null],
  ['-1', null],
  ['5.555', null],
  ['', null],
])('a rate of "%s" percent is %j', (text, rateBps) => {
  expect(readPercent(text)).toBe(rateBps);
});

test('every rate that can be kept is written as it is read', () => {
  for (let rateBps = 0; rateBps < 10_000; rateBps += 1)
    expect(readPercent(percentText(rateBps))).toBe(rateBps);
});
