import { scryptSync } from 'node:crypto';
import { hashPassword as hashByLibrary } from 'better-auth/crypto';
import { beforeEach, expect, test, vi } from 'vitest';
import { db } from '@/lib/db/client';
import { hashPassword, isHashedAsNow, verifyPassword } from '@/lib/people/password-hash';
import { signIn } from '@/lib/people/sign-in';
import { resetDatabase, useDatabase } from '@/tests/database';
import { makeStaff, PASSWORD } from './staff';

vi.unmock('@/lib/people/password-cost');
useDatabase();
beforeEach(resetDatabase);

// OWASP Password Storage Cheat Sheet, scrypt: the five settings it calls equal, as [log2 N, r, p].
const OWASP = ['17,8,1', '16,8,2', '15,8,3', '14,8,5', '13,8,10'];

test('a password is kept by one of the settings that OWASP asks for, as its own text says', async () => {
  const kept = await hashPassword(PASSWORD);
  const [, name, cost = '', salt = '', hash = ''] = kept.split('$');
  const [ln = 0, r = 0, p = 0] = [...cost.matchAll(/=(\d+)/g)].map(([, number]) => Number(number));
  expect(name).toBe('scrypt');
  expect(OWASP).toContain([ln, r, p].join());
  const saltBytes = Buffer.from(salt, 'base64url');
  expect(saltBytes).toHaveLength(16);
  const options = { N: 2 ** ln, r, p, maxmem: 2 ** 28 };
  expect(scryptSync(PASSWORD, saltBytes, 32, options).toString('base64url')).toBe(hash);
});

test('it fits itself alone, whatever way its accents were typed', async () => {
  const hash = await hashPassword('Caf\u00e9 auf der Mole');
  expect(await verifyPassword({ hash, password: 'Cafe\u0301 auf der Mole' })).toBe(true);
  expect(await verifyPassword({ hash, password: 'Cafe auf der Mole' })).toBe(false);
  expect(await verifyPassword({ hash: hash.slice(0, -8), password: 'Caf\u00e9 auf der Mole' })).toBe(false);
});

test('one that an earlier version kept still signs in, and is kept as now from then on', async () => {
  const { id, email } = await makeStaff('Mira', 'bench');
  const older = await hashByLibrary(PASSWORD);
  await db.account.updateMany({ where: { userId: id }, data: { password: older } });
  const now = new Date();
  const tryWith = (password: string) => signIn({ email, password, headers: new Headers(), now });
  const kept = async () => (await db.account.findFirst({ where: { userId: id } }))?.password ?? '';

  expect(await tryWith('seven apples at low tide')).toEqual({ outcome: 'refused' });
  expect(await kept()).toBe(older);
  expect(await tryWith(PASSWORD)).toEqual({ outcome: 'signed-in' });
  expect(isHashedAsNow(await kept())).toBe(true);
  expect(await tryWith(PASSWORD)).toEqual({ outcome: 'signed-in' });
});
