import { readdirSync, readFileSync } from 'node:fs';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { requireSignedIn, requireStaff } from '@/app/workshop/who';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { markTemporaryPassword } from '@/lib/people/temporary-password';
import { saveSettings } from '@/lib/workshop/save-settings';
import { resetDatabase, useDatabase } from '@/tests/database';
import { headersAfterSignIn, makeStaff } from './staff';

const sent = vi.hoisted(() => ({ headers: new Headers() }));
vi.mock('next/headers', () => ({ headers: async () => sent.headers }));
vi.mock('next/navigation', () => ({
  redirect: (to: string) => {
    throw new Error(`led to ${to}`);
  },
}));

useDatabase();
beforeEach(resetDatabase);

const SETTING_UP = '/workshop/account#second-step';

async function mira() {
  const { id, email } = await makeStaff('Mira', 'bench');
  sent.headers = await headersAfterSignIn(email);
  return id;
}

test('a workshop that does not ask lets in who has no second step', async () => {
  const id = await mira();
  expect(await requireStaff('bench')).toMatchObject({ id });
});

test('one that asks leads them to turning it on, whatever they open, and lets them do that alone', async () => {
  const id = await mira();
  await saveSettings({ asksSecondStep: true }, new Date(0));
  await expect(requireStaff()).rejects.toThrow(`led to ${SETTING_UP}`);
  await expect(requireStaff('bench')).rejects.toThrow(`led to ${SETTING_UP}`);
  await expect(requireSignedIn('settings')).rejects.toThrow(`led to ${SETTING_UP}`);
  expect(await requireStaff(undefined, { isSettingUp: true })).toMatchObject({ id });
  await db.user.update({ where: { id }, data: { twoFactorEnabled: true } });
  expect(await requireStaff('bench')).toMatchObject({ id });
  await expect(requireStaff('settings')).rejects.toThrow('led to /workshop/not-yours');
});

test('a temporary password is replaced first', async () => {
  const id = await mira();
  await saveSettings({ asksSecondStep: true }, new Date(0));
  await transaction((tx) => markTemporaryPassword(tx, id, null));
  await expect(requireStaff()).rejects.toThrow('led to /workshop/sign-in/new-password');
});

describe('what is open to somebody without it', () => {
  const folder = 'app/workshop';
  const uses = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name) && name !== 'who.ts')
    .flatMap((name) => {
      const text = readFileSync(`${folder}/${name}`, 'utf8');
      return Array.from(text.matchAll(/isSettingUp: true/g), () => name);
    });

  test('is the frame, the account page, the page with the key, and what turns it on or signs out', () => {
    expect(uses.sort()).toEqual([
      '(inside)/account/actions.ts',
      '(inside)/account/actions.ts',
      '(inside)/account/actions.ts',
      '(inside)/account/page.tsx',
      '(inside)/account/second-step/page.tsx',
      '(inside)/layout.tsx',
    ]);
  });
});
