import { execFile } from 'node:child_process';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { db } from '@/lib/db/client';
import { type Lock, takeLock } from '@/lib/db/lock';
import { useDatabase } from '@/tests/database';
import { workerFolder } from '@/tests/world/settings';
import { headersAfterSignIn, makeStaff, mustReplacePassword } from './staff';

vi.unmock('@/lib/people/password-cost');
useDatabase();

// As while the app runs: who holds the lock serves the embedded database, and a command asks there.
let lock: Lock;
beforeAll(async () => {
  lock = await takeLock(workerFolder, 'the app');
});
afterAll(async () => {
  if (lock.taken) await lock.release();
});

function reset(...args: string[]): Promise<{ status: number; text: string }> {
  const command = ['--conditions=react-server', '--import', 'tsx', 'lib/commands/owner-reset.ts', ...args];
  return new Promise((resolve) => {
    execFile(process.execPath, command, (error, out, err) =>
      resolve({ status: Number(error?.code ?? 0), text: `${out}${err}` }),
    );
  });
}

test('npm run owner:reset opens the account of an owner who is locked out, and no other', async () => {
  const owner = await makeStaff('Rowan', 'owner');
  const bench = await makeStaff('Mira', 'bench');
  await db.user.update({ where: { id: owner.id }, data: { twoFactorEnabled: true } });

  expect(await reset(bench.email)).toEqual({
    status: 1,
    text: `No owner signs in with ${bench.email}. Owners: ${owner.email}.\n`,
  });

  const { status, text } = await reset(owner.email, '--second-step-off');
  expect(status).toBe(0);
  const password = /shown only now: (\S+)/.exec(text)?.[1] ?? '';
  expect((await headersAfterSignIn(owner.email, password)).get('cookie')).toContain('session_token=');
  expect(await mustReplacePassword(owner.id)).toBe(true);
});
