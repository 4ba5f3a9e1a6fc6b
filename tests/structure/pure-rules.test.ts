import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';

/** What a rule must be handed as an argument, because its answer would differ from day to day or machine to machine. */
const impure =
  /\bnew Date\(\)|\bDate\.now\b|\bprocess\.env\b|\bMath\.random\b|\bfetch\(|\bperformance\.now\b/;

function filesUnder(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => path.join(folder, name));
}

const ruleFiles = [
  ...['lib/numbers', 'lib/money', 'lib/calendar', 'lib/statistics'].flatMap(filesUnder),
  ...filesUnder('lib').filter((file) => file.split(path.sep).includes('rules')),
];

test('the rules are where this test looks for them', () => {
  expect(ruleFiles.length).toBeGreaterThan(20);
});

test.each(ruleFiles)('%s asks neither clock, chance, settings nor network', (file) => {
  const lines = readFileSync(file, 'utf8').split('\n');
  const found = lines.filter((line) => impure.test(line) && !/^\s*(\*|\/\/|\/\*)/.test(line));
  expect(found).toEqual([]);
});

test.each(['const today = new Date();', 'if (Date.now() > end) return;', 'process.env.TZ', 'Math.random()'])(
  'the test would notice %s',
  (line) => {
    expect(line).toMatch(impure);
  },
);
