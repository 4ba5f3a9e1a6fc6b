import { describe, expect, test } from 'vitest';
import {
  centimetreText,
  kilogramText,
  readCentimetres,
  readGrams,
  readKilograms,
} from '@/lib/parcels/rules/measures';
import {
  isPackedBattery,
  PACKED_BATTERY_WORDS,
  packedBatteryFrom,
  packedVerdict,
} from '@/lib/parcels/rules/packed-battery';

describe('measures as a person types them', () => {
  test.each([
    ['1250', 1250],
    ['1 250', 1250],
    ['0', null],
    ['100001', null],
    ['1.5', null],
    ['', null],
  ])('grams "%s" are %s', (text, grams) => expect(readGrams(text)).toBe(grams));

  test.each([
    ['30', 300],
    ['30.5', 305],
    ['30,5', 305],
    ['0', null],
    ['30.55', null],
    ['-3', null],
    ['301', null],
  ])('centimetres "%s" are %s mm', (text, millimetres) => expect(readCentimetres(text)).toBe(millimetres));

  test.each([
    ['2.5', 2500],
    ['0.001', 1],
    ['1.15', 1150],
    ['20', 20_000],
    ['1.0005', null],
    ['kg', null],
  ])('kilograms "%s" are %s g', (text, grams) => expect(readKilograms(text)).toBe(grams));

  test('and as they are shown again', () => {
    expect(centimetreText(305)).toBe('30.5');
    expect(kilogramText(14_625)).toBe('14.625 kg');
    expect(kilogramText(1000)).toBe('1 kg');
  });
});

describe('the battery of a unit that goes back', () => {
  test('is one of those that there are words for', () => {
    expect(Object.keys(PACKED_BATTERY_WORDS).filter(isPackedBattery)).toEqual([
      'fitted',
      'loose',
      'none',
      'unsound',
    ]);
    expect(['', 'healthy', 'Fitted'].filter(isPackedBattery)).toEqual([]);
  });

  test.each([
    ['lithium-ion', 'healthy', 'fitted'],
    ['lithium-ion', 'weak', 'fitted'],
    ['lithium-ion', 'none', 'none'],
    ['lithium-ion', 'wet', 'unsound'],
    ['button-cell', 'unknown', 'unsound'],
    ['none', 'healthy', 'none'],
  ] as const)('%s, told %s at booking: %s', (battery, answer, packed) => {
    expect(packedBatteryFrom(battery, answer)).toBe(packed);
  });

  // ADR 3.3 SP 188 (a), (b): 20 Wh a cell. SP 376: nobody can say that it is sound. UPU: fitted in equipment only (from memory).
  test.each([
    [12.36, 'fitted', 'post'],
    [12.36, 'loose', 'road-only'],
    [12.36, 'unsound', 'do-not-post'],
    [12.36, 'none', 'post'],
    // Nothing is known of a battery that is not there, and nothing need be.
    [null, 'none', 'post'],
    [null, 'fitted', 'do-not-post'],
    [100.0036, 'fitted', 'do-not-post'],
  ] as const)('%s Wh, %s: %s', (wattHours, packed, may) => {
    expect(packedVerdict({ battery: 'lithium-ion', wattHours }, packed).may).toBe(may);
  });
});
