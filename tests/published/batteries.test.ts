import { describe, expect, test } from 'vitest';
import {
  BATTERY_CONDITIONS,
  type BatteryFacts,
  batteryVerdict,
  wattHours,
} from '@/lib/parcels/rules/battery';

const sound: BatteryFacts = {
  battery: 'lithium-ion',
  wattHours: 12.36,
  packing: 'in-unit',
  condition: 'healthy',
};

describe('energy of a battery (Wh = nominal V x rated Ah, ADR SP 188 as read in a Swedish copy)', () => {
  test.each([
    [3.7, 0.729, 2.697],
    [3.83, 3.227, 12.36],
    [3.85, 4.31, 16.59],
    [11.1, 5.2, 57.72],
  ])('%d V and %d Ah is %d Wh', (volts, ampereHours, expected) => {
    expect(wattHours(volts, ampereHours)).toBeCloseTo(expected, 2);
  });

  test.each([
    [0, 1],
    [3.7, -1],
    [Number.NaN, 1],
  ])('%d V and %d Ah is refused', (volts, ampereHours) => {
    expect(() => wattHours(volts, ampereHours)).toThrow(RangeError);
  });
});

describe('limits of 20 Wh a cell and 100 Wh a battery (ADR SP 188 (a) and (b))', () => {
  test.each([
    { name: 'phone cell 3.83 V 3227 mAh', wh: wattHours(3.83, 3.227), cells: 1, may: 'post' },
    { name: 'cell 3.7 V 5405 mAh, 19.9985 Wh', wh: wattHours(3.7, 5.405), cells: 1, may: 'post' },
    { name: 'cell 3.7 V 5406 mAh, 20.0022 Wh', wh: wattHours(3.7, 5.406), cells: 1, may: 'do-not-post' },
    { name: 'the same 20.0022 Wh as a pack of two', wh: wattHours(3.7, 5.406), cells: 2, may: 'post' },
    { name: 'pack 11.1 V 5200 mAh, 57.72 Wh', wh: wattHours(11.1, 5.2), cells: 6, may: 'post' },
    { name: 'pack 14.8 V 6756 mAh, 99.9888 Wh', wh: wattHours(14.8, 6.756), cells: 8, may: 'post' },
    { name: 'pack 14.8 V 6757 mAh, 100.0036 Wh', wh: wattHours(14.8, 6.757), cells: 8, may: 'do-not-post' },
  ])('$name: $may', ({ wh, cells, may }) => {
    expect(batteryVerdict({ ...sound, wattHours: wh, cells }).may).toBe(may);
  });
});

describe('the mark on the parcel (ADR SP 188 (f) and IATA PI 967 Section II; the two-parcel limit from memory)', () => {
  test.each([
    { name: 'one pack fitted', facts: { cells: 6 }, mark: false },
    { name: 'four single cells fitted', facts: { cells: 1, batteries: 4 }, mark: false },
    { name: 'five single cells fitted', facts: { cells: 1, batteries: 5 }, mark: true },
    { name: 'two packs fitted', facts: { cells: 2, batteries: 2 }, mark: false },
    { name: 'three packs fitted', facts: { cells: 2, batteries: 3 }, mark: true },
    { name: 'two parcels of a consignment', facts: { packages: 2 }, mark: false },
    { name: 'three parcels of a consignment', facts: { packages: 3 }, mark: true },
  ])('$name: $mark', ({ facts, mark }) => {
    expect(batteryVerdict({ ...sound, ...facts })).toMatchObject({ may: 'post', mark });
  });

  test('button cells fitted in equipment need none', () => {
    expect(batteryVerdict({ ...sound, battery: 'button-cell', wattHours: null })).toMatchObject({
      may: 'post',
      mark: false,
    });
  });

  test('a battery packed beside the unit always needs one', () => {
    expect(batteryVerdict({ ...sound, packing: 'with-unit' })).toMatchObject({
      may: 'road-only',
      mark: true,
    });
  });
});

describe('charge at which it travels (ICAO Technical Instructions 2025-26, from 2026: 2.7 Wh found, 30 % from memory)', () => {
  test.each([
    {
      name: '3.7 V 729 mAh packed with the unit',
      wh: wattHours(3.7, 0.729),
      packing: 'with-unit',
      charge: null,
    },
    {
      name: '3.7 V 730 mAh packed with the unit',
      wh: wattHours(3.7, 0.73),
      packing: 'with-unit',
      charge: 30,
    },
    { name: 'fitted in the unit, as advice', wh: 12.36, packing: 'in-unit', charge: 30 },
    { name: 'alone (PI 965: at most 30 % whatever the size)', wh: 1, packing: 'alone', charge: 30 },
  ] as const)('$name', ({ wh, packing, charge }) => {
    expect(batteryVerdict({ ...sound, wattHours: wh, packing }).chargeAtMost).toBe(charge);
  });
});

describe('damaged batteries (ADR SP 376; by air forbidden)', () => {
  const never = BATTERY_CONDITIONS.filter((condition) => condition !== 'healthy' && condition !== 'weak');

  test.each(never)('%s is never accepted by post, in any packing and size', (condition) => {
    for (const battery of ['lithium-ion', 'button-cell'] as const) {
      for (const packing of ['in-unit', 'with-unit', 'alone'] as const) {
        const verdict = batteryVerdict({ battery, packing, condition, wattHours: 1 });
        expect(verdict.may).toBe('do-not-post');
        expect(verdict.insteadSteps.length).toBeGreaterThan(1);
      }
    }
  });

  test('a battery that cannot be judged counts as damaged (SP 376)', () => {
    expect(batteryVerdict({ ...sound, condition: 'unknown' }).code).toBe('unclear-condition');
  });
});

test('a lithium battery alone never goes by ordinary post (UN 3480, PI 965: not on passenger aircraft)', () => {
  expect(batteryVerdict({ ...sound, packing: 'alone' })).toMatchObject({ may: 'road-only', mark: true });
});
