import JsBarcode from 'jsbarcode';
import { describe, expect, it } from 'vitest';
import { type Pixels, readCode } from '@/app/ui/forms/scan-pixels';
import { qrModules } from '@/lib/documents/kit/codes';

const CODE = `https://post.example.org/c/${'Ab3_-'.repeat(40)}`;

type Drawing = { scale: number; ink?: number; paper?: number };

/** A matrix of dark and light modules as a picture with a margin, as a camera would see it straight on. */
function picture(rows: readonly (readonly boolean[])[], o: Drawing): Pixels {
  const { scale, ink = 20, paper = 235 } = o;
  const margin = 8;
  const across = Math.max(...rows.map((row) => row.length));
  const width = (across + 2 * margin) * scale;
  const height = (rows.length + 2 * margin) * scale;
  const data = new Uint8ClampedArray(width * height * 4).fill(255);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const row = rows[Math.floor(y / scale) - margin];
      const isDark = row?.[Math.floor(x / scale) - margin] === true;
      data.fill(isDark ? ink : paper, 4 * (y * width + x), 4 * (y * width + x) + 3);
    }
  }
  return { data, width, height };
}

function bars(text: string, format: 'CODE128' | 'CODE39'): boolean[][] {
  const drawn: { encodings?: { data: string }[] } = {};
  JsBarcode(drawn, text, { format });
  const modules = (drawn.encodings ?? []).flatMap(({ data }) => [...data].map((module) => module === '1'));
  return Array.from({ length: 40 }, () => modules);
}

function quarterTurned({ data, width, height }: Pixels): Pixels {
  const turned = new Uint8ClampedArray(data.length);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const from = 4 * (y * width + x);
      turned.set(data.subarray(from, from + 4), 4 * (x * height + (height - 1 - y)));
    }
  }
  return { data: turned, width: height, height: width };
}

/** Noise that is the same on every run, and less light towards one side, as by a window. */
function asByAWindow({ data, width, height }: Pixels): Pixels {
  let state = 7;
  const dimmed = data.map((value, i) => {
    if (i % 4 === 3) return value;
    state = (state * 48_271) % 2_147_483_647;
    const share = 0.55 + (0.45 * (Math.floor(i / 4) % width)) / width;
    return value * share + (state % 31) - 15;
  });
  return { data: dimmed, width, height };
}

describe('a code before the camera is read', () => {
  it.each([
    ['the code of a certificate', picture(qrModules(CODE), { scale: 4 }), CODE],
    [
      'the code of a packing slip',
      picture(qrModules('https://post.example.org/track/J4K7QX290'), { scale: 5 }),
      'https://post.example.org/track/J4K7QX290',
    ],
    ['bars of a serial, Code 128', picture(bars('HW2-10480-K', 'CODE128'), { scale: 3 }), 'HW2-10480-K'],
    ['bars of a serial, Code 39', picture(bars('HW2-10480-K', 'CODE39'), { scale: 3 }), 'HW2-10480-K'],
    [
      'bars on their side',
      quarterTurned(picture(bars('HW2-10480-K', 'CODE128'), { scale: 3 })),
      'HW2-10480-K',
    ],
    ['grey on grey', picture(qrModules('HW2-10480-K'), { scale: 6, ink: 90, paper: 160 }), 'HW2-10480-K'],
    ['a square in uneven light', asByAWindow(picture(qrModules(CODE), { scale: 5 })), CODE],
    [
      'bars in uneven light',
      asByAWindow(picture(bars('HW2-10480-K', 'CODE128'), { scale: 4 })),
      'HW2-10480-K',
    ],
  ])('%s', (_name, pixels, text) => {
    expect(readCode(pixels)).toBe(text);
  });
});

describe('nothing is read', () => {
  it.each([
    ['from a blank wall', picture([[false]], { scale: 40 })],
    ['from half of a square', picture(qrModules(CODE).slice(0, 20), { scale: 4 })],
    ['from a picture of one point', { data: new Uint8ClampedArray(4), width: 1, height: 1 }],
  ])('%s', (_name, pixels) => {
    expect(readCode(pixels)).toBeNull();
  });

  it('from bars whose check character is wrong', () => {
    const whole = bars('HW2-10480-K', 'CODE128');
    const wrong = whole.map((row) => [...row.slice(0, 35), ...row.slice(46, 57), ...row.slice(46)]);
    expect(readCode(picture(whole, { scale: 3 }))).toBe('HW2-10480-K');
    expect(readCode(picture(wrong, { scale: 3 }))).toBeNull();
  });
});
