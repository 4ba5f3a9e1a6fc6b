import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';

const actions = readdirSync('app', { recursive: true, encoding: 'utf8' })
  .filter((name) => /\.tsx?$/.test(name))
  .map((name) => path.join('app', name))
  .filter((file) => readFileSync(file, 'utf8').startsWith("'use server'"))
  .flatMap((file) =>
    [
      ...readFileSync(file, 'utf8').matchAll(
        /^export const (\w+): FormAction(?:<\s*\[([^\]]*)\][^=]*>)? = async \(([^)]*)\) =>/gm,
      ),
    ].map(([, name = '', bound = '', parameters = '']) => ({
      action: `${file} ${name}`,
      bound: partsOf(bound),
      parameters: partsOf(parameters),
    })),
  );

function partsOf(list: string): string[] {
  return list
    .split(',')
    .map((part) => part.trim())
    .filter((part) => part !== '');
}

test('there are actions to look at', () => expect(actions.length).toBeGreaterThan(80));

// lib/gate counts what is sent against what an action takes; one that leaves out its last parameters is sent less by
// pages with script than by those without.
test.each(actions)(
  '$action takes what the page bound, the answer of before and the form, at most six',
  ({ bound, parameters }) => {
    expect(parameters.slice(-2).join(' ')).toMatch(/^_?before _?formData$/);
    for (const part of bound) expect(part).toMatch(/^\w+: (string|number)( \| null)?$/);
    expect(parameters.slice(0, -2)).toEqual(bound.map((part) => part.split(':')[0]));
    expect(bound.length).toBeLessThanOrEqual(4);
  },
);
