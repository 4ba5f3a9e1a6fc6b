import { describe, expect, test } from 'vitest';
import { parcelForm } from '@/lib/jobs/rules/booking';
import { namesLooseBattery } from '@/lib/parcels/rules/loose-battery';

// Words as customers write them (common practice, no source).
describe('a loose battery in what else is in the parcel', () => {
  test.each([
    'Spare battery',
    'two AA batteries',
    'Strap and a power bank',
    'powerbank',
    'old cell',
    'battery (new), battery cover',
    'Akku',
  ])('%s is one', (text) => {
    expect(namesLooseBattery(text)).toBe(true);
  });

  test.each([
    '',
    'Battery cover',
    'battery-door',
    'Battery charger and its lead',
    'Strap, no batteries',
    'Case without battery',
    'Cellist’s clip',
    'USB cable',
  ])('%s is none', (text) => {
    expect(namesLooseBattery(text)).toBe(false);
  });

  test('is refused at its field, with what to do', () => {
    const read = parcelForm.safeParse({
      battery: 'healthy',
      data: 'saved',
      otherAccessory: 'Spare battery',
    });
    expect(read.error?.issues.map(({ path, message }) => [path, message])).toEqual([
      [['otherAccessory'], expect.stringContaining('keep loose batteries and power banks at home')],
    ]);
  });
});
