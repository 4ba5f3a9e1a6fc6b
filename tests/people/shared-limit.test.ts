import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { expect, test } from 'vitest';
import { db } from '@/lib/db/client';
import { limitAttempts } from '@/lib/people/limit-attempts';
import { useDatabase } from '@/tests/database';

useDatabase();

const NOW = '2026-12-01T09:00:00Z';

/** A process of its own, like a second instance of the app, that tries so often; gives back how many tries passed. */
async function passedElsewhere(tries: number): Promise<number> {
  const script = `
    const { limitAttempts } = await import('@/lib/people/limit-attempts');
    const { disconnect } = await import('@/lib/db/client');
    const limit = { max: 12, windowSeconds: 900, now: new Date('${NOW}') };
    const answers = await Promise.all(Array.from({ length: ${tries} }, () => limitAttempts('shared', limit)));
    process.stdout.write(String(answers.filter(({ allowed }) => allowed).length));
    await disconnect();`;
  const child = spawn(
    process.execPath,
    ['--conditions=react-server', '--import', 'tsx', '--input-type=module', '--eval', script],
    { env: process.env, stdio: ['ignore', 'pipe', 'inherit'] },
  );
  let said = '';
  child.stdout.on('data', (part) => {
    said += part;
  });
  await once(child, 'close');
  return Number(said || 'NaN');
}

test('two instances of the app share one count, and a third that starts later finds it spent', async () => {
  const passed = await Promise.all([passedElsewhere(10), passedElsewhere(10)]);
  expect(passed[0] + passed[1]).toBe(12);
  expect(await db.attempt.findUnique({ where: { key: 'shared' } })).toMatchObject({ count: 20 });
  const here = await limitAttempts('shared', { max: 12, windowSeconds: 900, now: new Date(NOW) });
  expect(here).toEqual({ allowed: false, waitSeconds: 900 });
}, 60_000);
