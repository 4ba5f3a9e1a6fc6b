import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { ink } from '@/emails/ink';

const css = readFileSync('app/globals.css', 'utf8');

function coloursIn(block: string): Record<string, string> {
  return Object.fromEntries(
    [...block.matchAll(/--color-([a-z-]+):\s*(#[0-9a-f]{6})/g)].map(([, name = '', value = '']) => [
      name,
      value,
    ]),
  );
}

const [byDay = '', byNight = ''] = css.split('@media screen and (prefers-color-scheme: dark)');

test.each([
  ['light', byDay],
  ['dark', byNight.split('@media print')[0] ?? ''],
] as const)('mail has the colours of the house: %s', (scheme, block) => {
  const house = coloursIn(block);
  expect(Object.keys(house).length).toBeGreaterThan(10);
  for (const [name, value] of Object.entries(ink[scheme])) expect([name, house[name]]).toEqual([name, value]);
});
