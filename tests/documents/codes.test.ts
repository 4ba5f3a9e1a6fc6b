import jsQR from 'jsqr';
import { describe, expect, test } from 'vitest';
import { drawBagLabel } from '@/lib/documents/bag-label';
import { code128Modules, qrModules, quietZone } from '@/lib/documents/kit/codes';
import { certificateOf, coverLines, label, labelSetting } from '@/tests/documents/demo';
import { plain } from '@/tests/documents/read-pdf';

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

describe('QR codes', () => {
  const first = coverLines[0];
  const many = first ? Array.from({ length: 20 }, (_, index) => ({ ...first, id: `line-${index}` })) : [];

  test.each([
    ['a number alone', 'JCE9SAWRW'],
    ['a status page', 'https://quay-alder.example.org/track/JCE9SAWRW'],
    ['a certificate of two lines with its signature', certificateOf(coverLines).checkUrl],
    ['a certificate of 20 lines with its signature', certificateOf(many).checkUrl],
  ])('%s is read back by jsqr', (_, text) => {
    expect(decode(qrModules(text))).toBe(text);
  });

  test('a picture with a fifth of its modules turned is not read, so the check above can fail', () => {
    const modules = qrModules('https://quay-alder.example.org/track/JCE9SAWRW');
    const broken = modules.map((row, r) =>
      row.map((isDark, c) => ((r * 7 + c) % 5 === 0 ? !isDark : isDark)),
    );
    expect(decode(broken)).toBeUndefined();
  });

  // ISO/IEC 18004 table 7, recovery level M: bytes that versions 1, 4 and 10 hold; modules = 17 + 4 x version.
  test.each([
    [14, 1],
    [15, 2],
    [62, 4],
    [63, 5],
    [213, 10],
    [214, 11],
  ])('%i bytes take version %i at recovery level M', (bytes, version) => {
    expect(qrModules('a'.repeat(bytes))).toHaveLength(17 + 4 * version);
  });
});

describe('Code 128', () => {
  // ISO/IEC 15417: symbols of 11 modules, bars of an even number of modules, stop of 13 (from memory).
  test('bars follow the rules of the symbology', () => {
    const bits = code128Modules('JCE9SAWRW');
    expect((bits.length - 13) % 11).toBe(0);
    expect(bits.endsWith('1100011101011')).toBe(true);
    const symbols = bits.slice(0, -13).match(/.{11}/g) ?? [];
    // Start, nine characters, check character.
    expect(symbols).toHaveLength(11);
    for (const symbol of symbols) {
      expect(symbol).toMatch(/^1+0+1+0+1+0+$/);
      expect([...symbol].filter((module) => module === '1').length % 2).toBe(0);
    }
    expect(new Set(symbols.slice(1, 10)).size).toBe(new Set('JCE9SAWRW').size);
  });

  test('text outside Latin is refused instead of left out', () => {
    expect(() => code128Modules('Київ')).toThrow(RangeError);
  });

  test('a label has a bar code and a QR code, both described', async () => {
    const file = plain(await drawBagLabel(label, labelSetting));
    expect(file).toContain('/Alt (QR code of job J-CE9S-AWRW)');
    expect(file).toContain('/Alt (Code 128 bar code of job number J-CE9S-AWRW)');
    // 62 x 29 mm in points.
    expect(file).toMatch(/\/MediaBox \[0 0 175\.74803\d* 82\.20472\d*\]/);
  });
});
