import { describe, expect, test } from 'vitest';
import { countryCodes } from '@/lib/numbers/countries';
import { needsCustomsNote } from '@/lib/parcels/rules/customs';
import { type CustomsFacts, customsNote } from '@/lib/parcels/rules/customs-note';

// The 27 member states since 2020 and Monaco (Regulation (EU) No 952/2013 Art. 4): from memory.
const UNION = 'AT BE BG CY CZ DE DK EE ES FI FR GR HR HU IE IT LT LU LV MC MT NL PL PT RO SE SI SK'.split(
  ' ',
);

describe('whether a parcel needs a customs note', () => {
  test('none inside the union, and one out of it or into it', () => {
    for (const from of UNION) {
      for (const to of UNION) expect(needsCustomsNote({ from, to, free: [] })).toBe(false);
      for (const to of ['GB', 'CH', 'NO', 'US', 'TR', 'IS', 'LI']) {
        expect(needsCustomsNote({ from, to, free: [] })).toBe(true);
        expect(needsCustomsNote({ from: to, to: from, free: [] })).toBe(true);
      }
    }
  });

  test('exactly 28 countries lie in the union: no other of ISO 3166-1 does', () => {
    const free = countryCodes().filter((to) => !needsCustomsNote({ from: 'IE', to, free: [] }));
    expect(free).toHaveLength(28);
  });

  test.each([
    ['GB', 'GB', [], false],
    ['GB', 'IE', [], true],
    ['GB', 'JE', ['JE'], false],
    ['CH', 'LI', ['LI'], false],
    ['IE', 'GB', ['GB'], false],
  ])('from %s to %s, free %j: %s', (from, to, free, isNeeded) => {
    expect(needsCustomsNote({ from, to, free })).toBe(isNeeded);
  });
});

const FACTS: CustomsFacts = {
  sender: {
    name: 'Quay & Alder',
    address: ['4 Slip Lane', ''],
    country: 'United Kingdom (GB)',
    phone: '',
    email: '',
  },
  receiver: {
    name: 'Mira Oakenfold',
    address: ['Marktgasse 3'],
    country: 'Switzerland (CH)',
    phone: '1',
    email: 'mira@example.org',
  },
  unit: 'Tideline Gull',
  family: 'Field recorders',
  serial: 'TG-1',
  isRepaired: true,
  isClaim: false,
  unitGrams: 420,
  parcelGrams: 980,
  valueMinor: 24_000,
  repairMinor: 6000,
  currency: 'GBP',
  tariffNumber: '8519.81',
  battery: { kind: 'lithium-ion', wattHours: 9.62, packed: 'fitted' },
  reference: 'J-4K7Q-X29D',
  invoice: null,
};

function told(facts: CustomsFacts, name: string): string | undefined {
  return customsNote(facts)
    .fields.flatMap((field) => field.entries)
    .find((entry) => entry.name === name)?.value;
}

describe('what a customs form asks', () => {
  test('the worth of the unit and the price of the repair stand apart, in the currency by its code', () => {
    expect(told(FACTS, 'Worth of the unit')).toBe('GBP 240.00');
    expect(told(FACTS, 'Price of the repair, apart from it')).toBe('GBP 60.00');
    const yen = { ...FACTS, currency: 'JPY', valueMinor: 32_000 };
    expect(told(yen, 'Worth of the unit')).toBe('JPY 32000');
  });

  test('returned goods in words, with weights and tariff number', () => {
    expect(told(FACTS, 'Description')).toBe('Field recorders: Tideline Gull, used, returned after repair');
    expect(told(FACTS, 'Category')).toBe('Returned goods');
    expect(told(FACTS, 'Net weight')).toBe('0.42 kg');
    expect(told(FACTS, 'Gross weight')).toBe('0.98 kg');
    expect(told(FACTS, 'Tariff number (HS)')).toBe('8519.81');
    expect(customsNote(FACTS).missing).toEqual([]);
  });

  test('a claim says why its repair costs nothing, and an unrepaired unit that none was done', () => {
    expect(told({ ...FACTS, isClaim: true, repairMinor: 0 }, 'Price of the repair, apart from it')).toBe(
      'GBP 0.00, repaired free of charge under its certificate',
    );
    const back = { ...FACTS, isRepaired: false, repairMinor: 960 };
    expect(told(back, 'Price of the repair, apart from it')).toBe('none: the unit was not repaired');
    expect(told(back, 'Where there is no such box')).toBe('Other: returned to its owner without repair');
  });

  // UN 3481, lithium-ion contained in or packed with equipment: ADR 3.2, table A.
  test.each([
    [{ kind: 'lithium-ion', packed: 'fitted' }, 'Lithium-ion battery of 9.62 Wh fitted in the unit, UN 3481'],
    [{ kind: 'lithium-ion', packed: 'loose' }, 'Lithium-ion battery of 9.62 Wh beside the unit, UN 3481'],
    [{ kind: 'lithium-ion', packed: 'none' }, 'No battery in the parcel'],
    [{ kind: 'button-cell', packed: 'fitted' }, 'Button cell fitted in the unit'],
    [{ kind: 'none', packed: 'fitted' }, 'No battery in the parcel'],
  ] as const)('battery %o: %s', (battery, statement) => {
    expect(told({ ...FACTS, battery: { wattHours: 9.62, ...battery } }, 'Statement')).toBe(statement);
  });

  test('what nobody has said is named, and stands as not said on the sheet', () => {
    const bare = { ...FACTS, valueMinor: null, parcelGrams: null, unitGrams: null, tariffNumber: '' };
    expect(customsNote(bare).missing).toHaveLength(4);
    expect(told(bare, 'Worth of the unit')).toBe('not said yet');
    expect(told({ ...FACTS, sender: FACTS.sender }, 'Address')).toBe('4 Slip Lane');
  });
});
