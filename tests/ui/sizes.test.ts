import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

// globals.css resets the sizes of type and names five; a class of another size would do nothing.
test('only sizes of type that exist are used', () => {
  const css = readFileSync('app/globals.css', 'utf8');
  const sizes = [...css.matchAll(/--text-([a-z]+):/g)].map(([, name]) => name);
  expect(sizes).toHaveLength(5);
  const common = ['xs', 'sm', 'base', 'lg', 'xl', '2xl', '3xl', '4xl'];
  const used = readdirSync('app', { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.tsx'))
    .flatMap((file) =>
      [...readFileSync(`app/${file}`, 'utf8').matchAll(/(?<![\w-])text-([a-z0-9]+)(?![\w-])/g)].map(
        ([, size]) => `${file}: text-${size}`,
      ),
    );
  expect(used.some((each) => each.endsWith(': text-small'))).toBe(true);
  expect(used.filter((each) => common.some((size) => each.endsWith(`: text-${size}`)))).toEqual([]);
});
