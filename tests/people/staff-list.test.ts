import { beforeEach, expect, test } from 'vitest';
import { db } from '@/lib/db/client';
import { addStaff } from '@/lib/people/add-staff';
import { changePassword } from '@/lib/people/change-password';
import { changeStaff } from '@/lib/people/change-staff';
import { listStaff } from '@/lib/people/records';
import { resetOwner } from '@/lib/people/reset-owner';
import { resetPassword } from '@/lib/people/reset-password';
import type { Role } from '@/lib/people/rules/roles';
import { endSession, signOutEverywhere } from '@/lib/people/sessions';
import { signIn } from '@/lib/people/sign-in';
import { resetDatabase, useDatabase } from '@/tests/database';
import { shownNow } from '@/tests/makers/shown';
import { headersAfterSignIn, makeStaff, mustReplacePassword, PASSWORD } from './staff';

useDatabase();
beforeEach(resetDatabase);

const now = new Date();
const change = (person: { email: string }, role: Role, isActive: boolean, initials = 'XX') => ({
  name: 'Somebody',
  email: person.email,
  initials,
  role,
  isActive,
});

test('somebody new gets initials from the name and a password to replace', async () => {
  const added = await addStaff({ name: 'Ines Berg', email: 'ines@example.org', role: 'front' }, now);
  expect(await listStaff(now)).toMatchObject([
    { name: 'Ines Berg', initials: 'IB', role: 'front', isActive: true },
  ]);
  expect(await mustReplacePassword(added.id)).toBe(true);
});

test('an address or initials that somebody has are refused at their field', async () => {
  await addStaff({ name: 'Ines Berg', email: 'ines@example.org', role: 'front' }, now);
  const again = addStaff({ name: 'Other Person', email: 'ines@example.org', role: 'bench' }, now);
  await expect(again).rejects.toMatchObject({ code: 'conflict', field: 'email' });
  const sameInitials = addStaff({ name: 'Ivo Blake', email: 'ivo@example.org', role: 'bench' }, now);
  await expect(sameInitials).rejects.toMatchObject({ code: 'conflict', field: 'initials' });
  expect(await db.user.count()).toBe(1);
});

test.each([
  ['stepping down', 'bench', true],
  ['being deactivated', 'owner', false],
] as const)('the last active owner is kept from %s', async (_name, role, isActive) => {
  const rowan = await makeStaff('Rowan', 'owner');
  await expect(
    changeStaff(await shownNow('person', rowan.id), change(rowan, role, isActive)),
  ).rejects.toMatchObject({
    code: 'conflict',
  });
  expect(await db.user.findUnique({ where: { id: rowan.id } })).toMatchObject({
    role: 'owner',
    isActive: true,
  });
});

test('a deactivated owner does not count as the other owner', async () => {
  const rowan = await makeStaff('Rowan', 'owner');
  const ines = await makeStaff('Ines', 'owner');
  await changeStaff(await shownNow('person', ines.id), change(ines, 'owner', false));
  await expect(
    changeStaff(await shownNow('person', rowan.id), change(rowan, 'bench', true, 'RO')),
  ).rejects.toMatchObject({
    code: 'conflict',
  });
});

test('an owner may change their own name', async () => {
  const rowan = await makeStaff('Rowan', 'owner');
  await changeStaff(await shownNow('person', rowan.id), change(rowan, 'owner', true));
  expect(await db.user.findUnique({ where: { id: rowan.id } })).toMatchObject({
    name: 'Somebody',
    role: 'owner',
  });
});

test('who corrects initials on an older page does not let somebody sign in again', async () => {
  const nils = await makeStaff('Nils', 'bench');
  const shown = await shownNow('person', nils.id);
  await changeStaff(shown, change(nils, 'bench', false, 'NP'));
  const late = changeStaff(shown, change(nils, 'bench', true, 'NI'));
  await expect(late).rejects.toMatchObject({ code: 'conflict' });
  expect(await db.user.findUniqueOrThrow({ where: { id: nils.id } })).toMatchObject({
    initials: 'NP',
    isActive: false,
  });
});

test('deactivating ends the sessions of that person only', async () => {
  const rowan = await makeStaff('Rowan', 'owner');
  const mira = await makeStaff('Mira', 'bench');
  await headersAfterSignIn(rowan.email);
  await headersAfterSignIn(mira.email);
  await changeStaff(await shownNow('person', mira.id), change(mira, 'bench', false));
  expect(await db.session.findMany({ select: { userId: true } })).toEqual([{ userId: rowan.id }]);
});

test('somebody who is gone is told as not found', async () => {
  await makeStaff('Rowan', 'owner');
  const gone = changeStaff({ id: 'gone', mark: '' }, change({ email: 'gone@example.org' }, 'bench', true));
  await expect(gone).rejects.toMatchObject({ code: 'not-found' });
});

test('a new temporary password replaces the old one, ends sessions and is replaced in turn', async () => {
  const mira = await makeStaff('Mira', 'bench');
  await headersAfterSignIn(mira.email);
  await expect(resetPassword(mira.id, { now, isSecondStepOff: false, by: mira })).rejects.toMatchObject({
    code: 'conflict',
  });
  const { temporaryPassword } = await resetPassword(mira.id, {
    now,
    isSecondStepOff: false,
    by: { id: 'another' },
  });
  expect(await db.session.count()).toBe(0);
  const old = await signIn({ email: mira.email, password: PASSWORD, headers: new Headers(), now });
  expect(old).toEqual({ outcome: 'refused' });
  const headers = await headersAfterSignIn(mira.email, temporaryPassword);
  const person = { id: mira.id, name: 'Mira', email: mira.email };
  const common = { person, workshopName: 'Quay & Alder', currentPassword: temporaryPassword, headers, now };
  await expect(changePassword({ ...common, newPassword: 'short' })).rejects.toMatchObject({
    field: 'newPassword',
  });
  await expect(changePassword({ ...common, newPassword: temporaryPassword })).rejects.toMatchObject({
    field: 'newPassword',
  });
  await changePassword({ ...common, newPassword: 'nine gulls over the pier' });
  expect(await mustReplacePassword(mira.id)).toBe(false);
  await headersAfterSignIn(mira.email, 'nine gulls over the pier');
});

test('changing the password asks for the present one and gives up after ten tries', async () => {
  const mira = await makeStaff('Mira', 'bench');
  const headers = await headersAfterSignIn(mira.email);
  const attempt = () =>
    changePassword({
      person: { id: mira.id, name: 'Mira', email: mira.email },
      workshopName: 'Quay & Alder',
      currentPassword: 'not the present one',
      newPassword: 'nine gulls over the pier',
      headers,
      now,
    });
  for (let i = 0; i < 10; i += 1) await expect(attempt()).rejects.toMatchObject({ field: 'currentPassword' });
  await expect(attempt()).rejects.toMatchObject({ code: 'too-many' });
});

test('a session can be ended by its own account only, and all of them at once', async () => {
  const mira = await makeStaff('Mira', 'bench');
  const ines = await makeStaff('Ines', 'front');
  await headersAfterSignIn(mira.email);
  await headersAfterSignIn(mira.email);
  const [session] = await db.session.findMany({ where: { userId: mira.id } });
  await endSession(ines.id, session?.id ?? '');
  expect(await db.session.count()).toBe(2);
  await endSession(mira.id, session?.id ?? '');
  expect(await db.session.count()).toBe(1);
  await headersAfterSignIn(ines.email);
  await signOutEverywhere(mira.id);
  expect(await db.session.findMany({ select: { userId: true } })).toEqual([{ userId: ines.id }]);
});

test('an owner who is locked out gets a password by address; nobody else does', async () => {
  const rowan = await makeStaff('Rowan', 'owner');
  const mira = await makeStaff('Mira', 'bench');
  const options = { now, isSecondStepOff: false };
  await expect(resetOwner(mira.email, options)).rejects.toThrow(/Owners: rowan@example.org/);
  const { temporaryPassword } = await resetOwner(' Rowan@Example.org', options);
  await headersAfterSignIn(rowan.email, temporaryPassword);
  await headersAfterSignIn(mira.email);
});
