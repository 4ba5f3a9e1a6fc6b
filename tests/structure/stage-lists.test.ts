import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { STAGES } from '@/lib/jobs/rules/stages';

/** A list of names in TypeScript or in SQL; one that takes a set apart (`...`) counts with what it names itself. */
const LIST = /[[(]\s*((?:(?:'[a-z-]+'|\.\.\.[A-Z_]+)\s*,?\s*)+)[\])]/g;

/** Lists of two stages or more: a decision that a new stage, or a new name of one, would slip past. */
function stageLists(source: string): string[] {
  return [...source.matchAll(LIST)]
    .map(([list]) => list.replace(/\s+/g, ' '))
    .filter((list) => STAGES.filter((stage) => list.includes(`'${stage}'`)).length > 1);
}

/** Made-up jobs of the measuring and fault commands are told by their stages. */
const ELSEWHERE = /[\\/](rules|generated|commands)[\\/]/;

const files = ['app', 'lib', 'emails']
  .flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' }).map((name) => path.join(folder, name)),
  )
  .filter((file) => /\.tsx?$/.test(file) && !ELSEWHERE.test(file));

test('stages are listed in lib/jobs/rules/stage-sets.ts, or in the one rule that asks, and nowhere else', () => {
  expect(files.length).toBeGreaterThan(600);
  const found = files.flatMap((file) =>
    stageLists(readFileSync(file, 'utf8')).map((list) => `${file}: ${list}`),
  );
  expect(found).toEqual([]);
});

test.each([
  "const OVER = ['closed', 'cancelled'];",
  "const HERE: readonly Stage[] = [\n  'arrived',\n  'assessing',\n];",
  "WHERE j.\"stage\" NOT IN ('cancelled', 'declined')",
  "stages: [...OPEN, 'ready', 'unclaimed']",
])('the test would notice %s', (source) => {
  expect(stageLists(source)).toHaveLength(1);
});

test.each(["z.enum(['accepted', 'declined'])", "in: ['booked', ...WITH_US]"])('and let %s pass', (source) => {
  expect(stageLists(source)).toEqual([]);
});
