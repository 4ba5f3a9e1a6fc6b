import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

// A cast address leads anywhere; every other one is checked against the pages when the types are.
const CASTS = ['nothing-here.ts', 'ui/page/route-to.ts', 'workshop/local-route.ts', 'workshop/on-form.ts'];

test('an address is taken for a page unseen in four places alone', () => {
  const found = readdirSync('app', { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .filter((name) => /\bas Route\b/.test(readFileSync(`app/${name}`, 'utf8')));
  expect(found.sort()).toEqual(CASTS);
});
