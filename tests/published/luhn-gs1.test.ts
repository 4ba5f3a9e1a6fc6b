import { describe, expect, test } from 'vitest';
import { gs1Digit, isGs1 } from '@/lib/numbers/gs1';
import { isImei, isLuhn, luhnDigit } from '@/lib/numbers/luhn';

describe('Luhn digits (ISO/IEC 7812-1 Annex B)', () => {
  test.each([
    ['7992739871', 3, 'common worked example, from memory'],
    ['7894', 9, 'python-stdnum luhn.py'],
    ['61248', 1, 'IBM documentation of modulus 10'],
    ['26053179311383', 7, '3GPP TS 23.003 Annex B.3 worked example'],
    ['49015420323751', 8, 'common IMEI example, from memory'],
    ['35686800004141', 8, 'python-stdnum imei.py'],
    ['35417803685978', 9, 'python-stdnum imei.py'],
  ])('%s carries %i (%s)', (payload, digit) => {
    expect(luhnDigit(payload)).toBe(digit);
    expect(isLuhn(`${payload}${digit}`)).toBe(true);
  });

  // The known weakness of the method, computed: this is why a job number is not protected by it.
  test('the swap of 09 and 90 goes unseen', () => {
    expect(isLuhn('1099')).toBe(true);
    expect(isLuhn('1909')).toBe(true);
  });
});

describe('IMEI (3GPP TS 23.003 Annex B)', () => {
  test('fifteen digits with their check digit', () => {
    expect(isImei('260531793113837')).toBe(true); // Annex B.3
    expect(isImei('490154203237518')).toBe(true); // from memory
    expect(isImei('356868000041418')).toBe(true); // python-stdnum imei.py
  });

  test('a wrong check digit and sixteen digits are refused', () => {
    expect(isImei('354178036859781')).toBe(false); // python-stdnum imei.py
    expect(isImei('3568680000414120')).toBe(false); // an IMEISV carries no check digit (Annex B)
  });
});

describe('GS1 digits (GS1 General Specifications 7.9)', () => {
  test.each([
    ['890400021003', 7, 'worked example of GS1 India'],
    ['03600024145', 7, 'UPC-A 036000241457'],
    ['7351353', 7, 'python-stdnum ean.py, EAN-8'],
    ['978047111709', 4, 'python-stdnum ean.py, EAN-13'],
    ['9841234567890', 8, 'python-stdnum ean.py, GTIN-14'],
    ['629104150021', 3, 'worked example of GS1, from memory'],
    ['37610425002123456', 9, 'worked example of GS1 for an SSCC, from memory'],
    ['400638133393', 1, 'common EAN-13 example, from memory'],
  ])('%s carries %i (%s)', (payload, digit) => {
    expect(gs1Digit(payload)).toBe(digit);
    expect(isGs1(`${payload}${digit}`)).toBe(true);
    expect(isGs1(`${payload}${(digit + 1) % 10}`)).toBe(false);
  });
});
