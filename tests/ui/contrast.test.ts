import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { colours, contrast, darkNames, type Scheme } from './tokens';

const SURFACES = ['ground', 'sheet', 'stub'];
const WRITTEN = ['ink', 'soft', 'action', 'action-deep', 'good', 'warn', 'stop', 'note'];

// Text that is printed on an inked area: buttons, the stamp of the present stage, the stamp of a stopped one, a QR code.
const ON_INK = [
  ['on-action', 'action'],
  ['on-action', 'action-deep'],
  ['sheet', 'ink'],
  ['sheet', 'stop'],
  ['code-ink', 'code-ground'],
];

function ratio(scheme: Scheme, one: string, other: string): number {
  const set = colours(scheme);
  const [a, b] = [set.get(one), set.get(other)];
  if (!a || !b) throw new Error(`no token ${a ? other : one}`);
  return contrast(a, b);
}

describe('the formula agrees with published values', () => {
  test('black on white is 21:1 (WCAG 2.2, note 1 of "contrast ratio": ratios range from 1 to 21)', () => {
    expect(contrast('000000', 'ffffff')).toBeCloseTo(21, 10);
    expect(contrast('4c5363', '4c5363')).toBe(1);
  });

  test('767676 on white is 4.54:1, the lightest grey that passes (common teaching value, from memory)', () => {
    expect(contrast('767676', 'ffffff')).toBeCloseTo(4.54, 2);
    expect(contrast('777777', 'ffffff')).toBeLessThan(4.5);
  });
});

describe.each<Scheme>(['light', 'dark'])('%s scheme', (scheme) => {
  const pairs = WRITTEN.flatMap((text) => SURFACES.map((surface) => [text, surface] as const));

  test.each(pairs)('%s written on %s reaches 4.5:1 (WCAG 2.2, 1.4.3)', (text, surface) => {
    expect(ratio(scheme, text, surface)).toBeGreaterThanOrEqual(4.5);
  });

  test.each(ON_INK)('%s printed on %s reaches 4.5:1 (WCAG 2.2, 1.4.3)', (text, area) => {
    expect(ratio(scheme, text ?? '', area ?? '')).toBeGreaterThanOrEqual(4.5);
  });

  test.each(SURFACES)('edges of fields and stamps on %s reach 3:1 (WCAG 2.2, 1.4.11)', (surface) => {
    expect(ratio(scheme, 'edge', surface)).toBeGreaterThanOrEqual(3);
  });
});

test('the dark scheme sets every colour but those of codes, which scanners need dark on light', () => {
  const light = [...colours('light').keys()].filter((name) => !name.startsWith('code-'));
  expect(darkNames().sort()).toEqual(light.sort());
});

test('no colour is written outside app/globals.css', () => {
  const app = fileURLToPath(new URL('../../app/', import.meta.url));
  const files = readdirSync(app, { recursive: true, encoding: 'utf8' }).filter(
    (file) => /\.(css|ts|tsx)$/.test(file) && file !== 'globals.css',
  );
  expect(files.length).toBeGreaterThan(30);
  const colour = /#[0-9a-f]{6}\b|#[0-9a-f]{3}\b(?=["';\s])|\b(rgba?|hsla?|oklch|oklab)\(/i;
  const guilty = files.filter((file) => colour.test(readFileSync(app + file, 'utf8')));
  expect(guilty).toEqual([]);
});
