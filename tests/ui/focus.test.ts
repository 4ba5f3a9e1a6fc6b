import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const rules = (file: string) =>
  [
    ...readFileSync(new URL(`../../app/ui/${file}`, import.meta.url), 'utf8').matchAll(
      /([^{}]+)\{([^{}]*)\}/g,
    ),
  ].map(([, selector = '', body = '']) => ({ selector: selector.replace(/\/\*.*?\*\//gs, '').trim(), body }));

// WCAG 2.2, 2.4.7. Rules of one weight win by their place, so the focus of a pin comes after what it reads.
test('a focused pin shows its focus whatever it reads', () => {
  const pins = rules('connector/connector.css').filter(
    ({ selector, body }) => /\.probe.*\.connector-pin/.test(selector) && /stroke:|stroke-width:/.test(body),
  );
  expect(pins.length).toBeGreaterThan(1);
  expect(pins.at(-1)?.selector).toContain(':focus-visible');
});

test('no box around the name in the bar cuts the outline of its link', () => {
  const box = rules('frame/frame.css').filter(({ selector }) => selector === '.benchbar-name');
  expect(box).toHaveLength(1);
  expect(box[0]?.body).not.toContain('overflow');
});

// A live region that comes out of `display: none` with its first words may not be read (from memory; WCAG 2.2, 4.1.3).
test('the line that tells of chosen files is there before it has words', () => {
  const line = rules('forms/forms.css').filter(({ selector }) => selector.startsWith('.field-chosen'));
  expect(line.length).toBeGreaterThan(0);
  for (const { body } of line) expect(body).not.toMatch(/display:\s*none|visibility/);
});
