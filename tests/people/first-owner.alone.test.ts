import { beforeEach, expect, test, vi } from 'vitest';
import { config } from '@/lib/config';
import { db } from '@/lib/db/client';
import { demoOwner, ensureFirstOwner } from '@/lib/people/first-owner';
import { isUnnamed } from '@/lib/people/rules/unnamed';
import { signIn } from '@/lib/people/sign-in';
import { refuseLiveDemonstration } from '@/prisma/demo/refuse-live';
import { DEMO_STAFF } from '@/prisma/demo/staff';
import { resetDatabase, useDatabase } from '@/tests/database';
import { makeStaff, mustReplacePassword } from './staff';

vi.mock('@/lib/config', async (original) => {
  const real = await original<typeof import('@/lib/config')>();
  return { ...real, config: { ...real.config } };
});

useDatabase();
beforeEach(resetDatabase);

const open = (first: { email: string; password: string } | null) =>
  signIn({
    email: first?.email ?? '',
    password: first?.password ?? '',
    headers: new Headers(),
    now: new Date(),
  });

test('a demonstration has a known owner', async () => {
  config.isDemo = true;
  const first = await ensureFirstOwner();
  expect(first).toEqual({ email: demoOwner.email, password: demoOwner.password });
  expect(await open(first)).toEqual({ outcome: 'signed-in' });
  expect(await ensureFirstOwner()).toBeNull();
});

test('outside a demonstration the password is drawn by chance and has to be replaced', async () => {
  config.isDemo = false;
  config.mailFrom = 'Quay & Alder <Workshop@example.org>';
  const first = await ensureFirstOwner();
  expect(first?.email).toBe('workshop@example.org');
  expect(first?.password).toMatch(/^([a-z2-9]{5}-){3}[a-z2-9]{5}$/);
  expect(first?.password).not.toBe(demoOwner.password);
  expect(await open(first)).toEqual({ outcome: 'signed-in' });
  const owner = await db.user.findFirstOrThrow({
    select: { id: true, role: true, name: true, initials: true },
  });
  expect(isUnnamed(owner)).toBe(true);
  expect(owner.role).toBe('owner');
  expect(await mustReplacePassword(owner.id)).toBe(true);
  await db.account.deleteMany();
  await db.user.deleteMany();
  expect((await ensureFirstOwner())?.password).not.toBe(first?.password);
});

test('an owner who is there already is left alone', async () => {
  config.isDemo = true;
  await makeStaff('Rowan', 'owner');
  expect(await ensureFirstOwner()).toBeNull();
  expect(await db.user.count()).toBe(1);
});

test('a demonstration does not go live while one of its accounts is there', async () => {
  await expect(refuseLiveDemonstration()).resolves.toBeUndefined();
  config.isDemo = true;
  await ensureFirstOwner();
  await expect(refuseLiveDemonstration()).rejects.toThrow(/^This is the data of a demonstration, [^\n]+$/);
  await db.user.updateMany({ data: { email: 'rowan.alder@example.org' } });
  await expect(refuseLiveDemonstration()).resolves.toBeUndefined();
  await db.user.updateMany({ data: { email: DEMO_STAFF[0].email } });
  await expect(refuseLiveDemonstration()).rejects.toThrow(/passwords everybody knows/);
});
