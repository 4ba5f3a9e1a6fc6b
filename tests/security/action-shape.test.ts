import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';

const actions = readdirSync('app', { recursive: true, encoding: 'utf8' })
  .filter((name) => /\.tsx?$/.test(name))
  .map((name) => path.join('app', name))
  .filter((file) => readFileSync(file, 'utf8').startsWith("'use server'"))
  .flatMap((file) =>
    [...readFileSync(file, 'utf8').matchAll(/export async function (\w+)\(([^)]*)\)/g)].map(
      ([, name = '', parameters = '']) => ({
        action: `${file} ${name}`,
        parameters: parameters.split(/\s+/).join(' '),
      }),
    ),
  );

test('there are actions to look at', () => expect(actions.length).toBeGreaterThan(80));

// lib/gate counts what is sent against what an action takes; one that leaves out its last parameters is sent less by
// pages with script than by those without.
test.each(actions)(
  '$action takes what the page bound, the answer of before and the form, at most six',
  ({ parameters }) => {
    expect(parameters).toMatch(/\b_?before: (\w+), _?formData: FormData,? ?$/);
    const bound = parameters.replace(/_?before: .*$/, '');
    expect(bound).toMatch(/^ ?(\w+: (string|number)( \| null)?, )*$/);
    expect(bound.split(':').length - 1).toBeLessThanOrEqual(4);
  },
);
