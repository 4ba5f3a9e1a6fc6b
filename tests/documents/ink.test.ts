import { expect, test } from 'vitest';
import { ink } from '@/lib/documents/kit/ink';

function luminance(colour: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5]
    .map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255)
    .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [dark = 0, light = 0] = [luminance(a), luminance(b)].sort((one, two) => one - two);
  return (light + 0.05) / (dark + 0.05);
}

// WCAG 2.2, 1.4.3: 4.5 to 1 for text; 1.4.11: 3 to 1 for signs that carry meaning.
test.each(['text', 'quiet', 'accent'] as const)('ink "%s" can be read on white and on the stub', (name) => {
  expect(contrast(ink[name], ink.white)).toBeGreaterThanOrEqual(4.5);
  expect(contrast(ink[name], ink.stub)).toBeGreaterThanOrEqual(4.5);
});

test('dotted frames and holes can be seen', () => {
  expect(contrast(ink.perforation, ink.white)).toBeGreaterThanOrEqual(3);
});

test('black on white is 21 to 1, so the measure is the published one', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
});
