import { describe, expect, test } from 'vitest';
import { jumperExpectation, wireResistance } from '@/lib/bench/rules/jumper-wire';

const ohmsPerKilometre = (diameterMm: number) => wireResistance({ lengthMm: 1_000_000, diameterMm });

describe('American Wire Gauge tables at 20 °C, in ohms per kilometre', () => {
  // Copies of published tables, found without the name of who made them. They round differently: agreement to 0.1 %.
  test.each([
    [22, 0.6438, 52.94],
    [24, 0.5106, 84.2],
    [26, 0.4049, 133.9],
    [28, 0.3211, 212.9],
    [30, 0.2546, 338.5],
    [32, 0.2019, 538.3],
    [34, 0.1601, 855.8],
    [36, 0.127, 1360],
    [38, 0.1007, 2163],
    [40, 0.0799, 3440],
  ])('AWG %d, %d mm, is %d', (_gauge, diameter, table) => {
    expect(Math.abs(ohmsPerKilometre(diameter) / table - 1)).toBeLessThan(0.001);
  });

  test.each([
    [28, 0.3211, 64.9],
    [30, 0.2546, 103.2],
    [38, 0.1007, 659.6],
  ])('AWG %d, %d mm, is %d per 1000 ft', (_gauge, diameterMm, table) => {
    const perThousandFeet = wireResistance({ lengthMm: 304_800, diameterMm });
    expect(Math.abs(perThousandFeet / table - 1)).toBeLessThan(0.001);
  });
});

describe('metric sizes (IEC 60028, 1/58 ohm mm2/m, from memory; figures computed)', () => {
  test.each([
    [0.02, 54_880],
    [0.05, 8781],
    [0.1, 2195],
    [0.15, 975.6],
    [0.2, 548.8],
  ])('%d mm is %d ohms per kilometre', (diameter, expected) => {
    expect(Math.abs(ohmsPerKilometre(diameter) / expected - 1)).toBeLessThan(0.0005);
  });

  test('30 mm of 0.1 mm wire is 65.9 milliohm', () => {
    expect(wireResistance({ lengthMm: 30, diameterMm: 0.1 }) * 1000).toBeCloseTo(65.9, 1);
  });
});

// IEC 60228 class 1 and 2, highest resistance at 20 °C, from memory: bare copper of the nominal area stays below it.
test.each([
  [0.5, 36],
  [0.75, 24.5],
  [1, 18.1],
  [1.5, 12.1],
  [2.5, 7.41],
])('%d mm2 stays below %d ohms per kilometre', (area, highest) => {
  const computed = ohmsPerKilometre(Math.sqrt((4 * area) / Math.PI));
  expect(computed).toBeLessThan(highest);
  expect(computed).toBeGreaterThan(highest * 0.9);
});

test('the expectation leaves room for two sound joints (common practice, no source)', () => {
  const { wire, most } = jumperExpectation({ lengthMm: 30, diameterMm: 0.1 });
  expect(most - wire).toBeCloseTo(0.02, 10);
});

test.each([
  { lengthMm: 0, diameterMm: 0.1 },
  { lengthMm: 30, diameterMm: -0.1 },
])('$lengthMm x $diameterMm mm is refused', (wire) => {
  expect(() => wireResistance(wire)).toThrow(RangeError);
});
