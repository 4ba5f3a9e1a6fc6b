import jsQR from 'jsqr';
import { describe, expect, test } from 'vitest';
import { qrModules, quietZone } from '@/lib/documents/kit/codes';
import { creditorReference, isBic, isIban, showIban } from '@/lib/invoices/rules/bank';
import { type EpcTransfer, epcText } from '@/lib/invoices/rules/epc-qr';

// The layout of the European Payments Council's guideline EPC069-12, version 2.1, as told by its own text ("error level M",
// "maximum QR code version 13, ... 331 byte payload") and by the documentation of two generators: segno 1.4.1
// (docs/epc-qrcodes.rst) and BWIPP (wiki, EPC-QR-Code). Order and lengths of the elements agree in all three.
const transfer: EpcTransfer = {
  name: 'Quay & Alder',
  iban: 'DE71 1102 2033 0123 4567 89',
  bic: '',
  currency: 'EUR',
  amount: 1230,
  remittance: { reference: 'RF18539007547034' },
};
const textOf = (over: Partial<EpcTransfer> = {}) => {
  const reading = epcText({ ...transfer, ...over });
  return reading.ok ? reading.text : reading.reason;
};

describe('the text of a transfer code, EPC069-12', () => {
  test('has its elements in order, one a line, and ends with the last that is given', () => {
    expect(textOf().split('\n')).toEqual([
      'BCD',
      '002',
      '1',
      'SCT',
      '',
      'Quay & Alder',
      'DE71110220330123456789',
      'EUR12.30',
      '',
      'RF18539007547034',
    ]);
    expect(
      textOf({ remittance: { text: 'Job J-4K7Q-X29D' } })
        .split('\n')
        .slice(8),
    ).toEqual(['', '', 'Job J-4K7Q-X29D']);
    expect(textOf({ remittance: { text: '' } })).toMatch(/\nEUR12\.30$/);
    expect(textOf({ bic: 'BHBLDEHHXXX' }).split('\n')[4]).toBe('BHBLDEHHXXX');
  });

  test('takes amounts from 0.01 to 999999999.99, in euro alone', () => {
    expect(textOf({ amount: 1 })).toContain('\nEUR0.01\n');
    expect(textOf({ amount: 99_999_999_999 })).toContain('\nEUR999999999.99\n');
    for (const amount of [0, -1, 0.5, 100_000_000_000]) expect(textOf({ amount })).toBe('amount');
    expect(textOf({ currency: 'GBP' })).toBe('currency');
  });

  test('refuses what does not fit its element', () => {
    expect(textOf({ name: '' })).toBe('name');
    expect(textOf({ name: 'n'.repeat(71) })).toBe('name');
    expect(textOf({ name: 'n'.repeat(70) })).toContain('n'.repeat(70));
    expect(textOf({ iban: 'DE72 1102 2033 0123 4567 89' })).toBe('iban');
    expect(textOf({ bic: 'BHBL' })).toBe('bic');
    expect(textOf({ remittance: { reference: 'RF19539007547034' } })).toBe('remittance');
    expect(textOf({ remittance: { text: 't'.repeat(141) } })).toBe('remittance');
    expect(textOf({ name: '桟'.repeat(70), remittance: { text: '橋'.repeat(140) } })).toBe('length');
  });

  test('lets no line into an element that belongs to another', () => {
    expect(textOf({ name: 'Quay\nDE00' }).split('\n')[5]).toBe('Quay DE00');
  });

  test('the fullest text of plain letters fits version 13 at level M, and is read back', () => {
    const text = textOf({
      name: 'n'.repeat(70),
      bic: 'BHBLDEHHXXX',
      amount: 99_999_999_999,
      iban: 'MT84MALT011000012345MTLCAST001S',
      remittance: { text: 't'.repeat(140) },
    });
    // ISO/IEC 18004: a symbol has 17 + 4 x version modules a side.
    expect(qrModules(text).length).toBeLessThanOrEqual(17 + 4 * 13);
    expect(decode(qrModules(text))).toBe(text);
    // 331 bytes are what version 13 holds at level M in byte mode (ISO/IEC 18004 table 7).
    expect(qrModules('a'.repeat(331))).toHaveLength(69);
    expect(qrModules('a'.repeat(332))).toHaveLength(73);
  });

  test('the code of a usual payment is read back whole', () => {
    expect(decode(qrModules(textOf({ name: 'Müller & Söhne' })))).toBe(textOf({ name: 'Müller & Söhne' }));
  });
});

describe('check digits', () => {
  // ISO 13616 registry examples (the first DE one from memory), and the BWIPP and vendor samples of EPC codes.
  test.each([
    'GB33BUKB20201555555555',
    'DE89370400440532013000',
    'DE71110220330123456789',
    'BE72000000001616',
    'MT84MALT011000012345MTLCAST001S',
  ])('%s is an IBAN, and no other last digit is', (iban) => {
    expect(isIban(iban)).toBe(true);
    const last = iban.at(-1) ?? '';
    for (const other of '0123456789')
      if (other !== last) expect(isIban(iban.slice(0, -1) + other)).toBe(false);
  });

  test('RF18539007547034 is the creditor reference of 539007547034 (ISO 11649, its usual example)', () => {
    expect(creditorReference('539007547034')).toBe('RF18539007547034');
    expect(creditorReference('2026-00007')).toMatch(/^RF\d\d202600007$/);
    expect(() => creditorReference('-')).toThrow(RangeError);
    // 25 characters at the most, four of them 'RF' and the check digits.
    expect(creditorReference('1'.repeat(21))).toHaveLength(25);
    expect(() => creditorReference('1'.repeat(22))).toThrow(RangeError);
  });

  test('IBANs are shown in fours, BICs have 8 or 11 characters', () => {
    expect(showIban('DE71110220330123456789')).toBe('DE71 1102 2033 0123 4567 89');
    expect([isBic('BHBLDEHH'), isBic('BHBLDEHHXXX'), isBic('BHBLDEHHX')]).toEqual([true, true, false]);
  });
});

function decode(modules: readonly boolean[][], scale = 4): string | undefined {
  const side = (modules.length + quietZone * 2) * scale;
  const pixels = new Uint8ClampedArray(side * side * 4).fill(255);
  modules.forEach((row, r) => {
    row.forEach((isDark, c) => {
      if (!isDark) return;
      for (let y = 0; y < scale; y += 1)
        for (let x = 0; x < scale; x += 1) {
          const at = (((r + quietZone) * scale + y) * side + (c + quietZone) * scale + x) * 4;
          pixels.fill(0, at, at + 3);
        }
    });
  });
  return jsQR(pixels, side, side)?.data;
}
