import { expect, test } from 'vitest';
import { ink } from '@/lib/documents/kit/ink';
import { colours, contrast } from '@/tests/ui/tokens';

// The docket on paper has the colours it has on screen by day.
test.each([
  ['text', 'ink'],
  ['quiet', 'soft'],
  ['accent', 'action'],
  ['rule', 'rule'],
  ['perforation', 'edge'],
  ['stub', 'stub'],
] as const)('paper has the colour of the house: %s is %s', (name, house) => {
  expect(ink[name]).toBe(`#${colours('light').get(house)}`);
});

test('and none beside them but white paper and black codes', () => {
  const { text, quiet, accent, rule, perforation, stub, ...own } = ink;
  expect(own).toEqual({ white: '#ffffff', code: '#000000' });
});

// WCAG 2.2, 1.4.3: 4.5 to 1 for text; 1.4.11: 3 to 1 for signs that carry meaning.
test.each(['text', 'quiet', 'accent'] as const)('ink "%s" can be read on white and on the stub', (name) => {
  expect(contrast(bare(ink[name]), bare(ink.white))).toBeGreaterThanOrEqual(4.5);
  expect(contrast(bare(ink[name]), bare(ink.stub))).toBeGreaterThanOrEqual(4.5);
});

test('dotted frames and holes can be seen', () => {
  expect(contrast(bare(ink.perforation), bare(ink.white))).toBeGreaterThanOrEqual(3);
});

test('black on white is 21 to 1, so the measure is the published one', () => {
  expect(contrast('000000', 'ffffff')).toBeCloseTo(21, 5);
});

/** As tests/ui/tokens.ts takes a colour. */
function bare(colour: string): string {
  return colour.slice(1);
}
