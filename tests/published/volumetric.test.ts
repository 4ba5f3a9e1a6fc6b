import { describe, expect, test } from 'vitest';
import { chargeableWeight, type VolumeRule, volumetricWeight } from '@/lib/parcels/rules/weight';

const air: VolumeRule = { unit: 'cm-kg', divisor: 6000, wholeSides: false, step: 500 };
const courier: VolumeRule = { ...air, divisor: 5000 };
const pounds: VolumeRule = { unit: 'in-lb', divisor: 139, wholeSides: true, step: 1000 };

describe('IATA TACT, cubic centimetres / 6000 (published worked examples, found in a copy without a name)', () => {
  test('30 x 45 x 65 cm is 14.625 kg, and 14 kg on the scale is charged as 15', () => {
    expect(volumetricWeight([300, 450, 650], air)).toBe(14_625);
    expect(chargeableWeight({ sides: [300, 450, 650], weight: 14_000 }, air)).toBe(15_000);
  });

  test('140 x 100 x 90 cm is 210 kg', () => {
    expect(volumetricWeight([1400, 1000, 900], air)).toBe(210_000);
  });
});

describe('courier, cubic centimetres / 5000 (rule published, figures computed)', () => {
  test.each([
    { sides: [400, 300, 200], by5000: 4800, by6000: 4000 },
    { sides: [500, 400, 300], by5000: 12_000, by6000: 10_000 },
  ] as const)('$sides mm', ({ sides, by5000, by6000 }) => {
    expect(volumetricWeight(sides, courier)).toBe(by5000);
    expect(volumetricWeight(sides, air)).toBe(by6000);
  });
});

describe('courier, cubic inches / 139, sides to the whole inch, weight up to the pound', () => {
  test('30.4 x 19.6 x 19.5 in is 30 x 20 x 20 and 87 lb (published worked example, found in a copy without a name)', () => {
    expect(volumetricWeight([304, 196, 195], pounds)).toBeCloseTo(86_331, 0);
    expect(chargeableWeight({ sides: [304, 196, 195], weight: 1000 }, pounds)).toBe(87_000);
  });

  test.each([
    { divisor: 139, unrounded: 12_432, charged: 13_000 },
    { divisor: 166, unrounded: 10_410, charged: 11_000 },
  ])('12 x 12 x 12 in at $divisor (computed)', ({ divisor, unrounded, charged }) => {
    const rule = { ...pounds, divisor };
    expect(volumetricWeight([120, 120, 120], rule)).toBeCloseTo(unrounded, 0);
    expect(chargeableWeight({ sides: [120, 120, 120], weight: 1 }, rule)).toBe(charged);
  });
});
