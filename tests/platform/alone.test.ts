import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';

// The other files share a process each half of them: a module replaced for one would be replaced for those that follow.
const REPLACES = /\bvi\.(mock|unmock|doMock|doUnmock|resetModules)\(/;

test('files that replace modules are named .alone, and have a process for themselves', () => {
  const files = readdirSync('tests', { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.test\.tsx?$/.test(name) && !/\.alone\./.test(name))
    .map((name) => path.join('tests', name));
  expect(files.length).toBeGreaterThan(200);
  // This file names what it looks for.
  const replacing = files.filter((file) => REPLACES.test(readFileSync(file, 'utf8')));
  expect(replacing.filter((file) => file !== path.join('tests', 'platform', 'alone.test.ts'))).toEqual([]);
});
