import { beforeEach, expect, test } from 'vitest';
import { db } from '@/lib/db/client';
import { auth } from '@/lib/people/auth';
import { changeStaff } from '@/lib/people/change-staff';
import { listStaff } from '@/lib/people/records';
import { endOtherSessions, endOthersAfter, listSessions, noteUse } from '@/lib/people/sessions';
import { resetDatabase, useDatabase } from '@/tests/database';
import { shownNow } from '@/tests/makers/shown';
import { headersAfterSignIn, makeStaff } from './staff';

useDatabase();
beforeEach(resetDatabase);

const now = new Date();
const later = (minutes: number) => new Date(now.getTime() + minutes * 60_000);

/** Somebody signed in on so many devices, the newest session first. */
async function signedIn(name: string, devices: number) {
  const { id, email } = await makeStaff(name, 'bench');
  const headers: Headers[] = [];
  for (let i = 0; i < devices; i += 1) headers.push(await headersAfterSignIn(email));
  const sessions = await db.session.findMany({ where: { userId: id }, orderBy: { createdAt: 'desc' } });
  return { id, email, headers, sessions };
}

test('a session is noted as used every five minutes, and ends after four hours without a click', async () => {
  const { id, headers, sessions } = await signedIn('Mira', 1);
  const [session] = sessions;
  if (!session) throw new Error('nobody is signed in');
  const at = (minutes: number) => new Date(session.updatedAt.getTime() + minutes * 60_000);
  const used = async () => (await db.session.findUnique({ where: { id: session.id } }))?.updatedAt;

  expect(await noteUse(session, at(4.9))).toEqual(session.updatedAt);
  expect(await used()).toEqual(session.updatedAt);
  expect(await noteUse(session, at(5))).toEqual(at(5));
  expect(await used()).toEqual(at(5));

  const rested = { id: session.id, updatedAt: at(5) };
  expect(await noteUse(rested, at(5 + 239))).toEqual(at(5 + 239));
  await db.session.update({ where: { id: session.id }, data: { updatedAt: at(5) } });
  expect((await listStaff(at(5 + 239)))[0]?.signedInSince).toEqual(session.createdAt);
  expect(await listSessions(id, at(5 + 241))).toEqual([]);
  expect((await listStaff(at(5 + 241)))[0]?.signedInSince).toBeNull();
  expect(await noteUse(rested, at(5 + 240))).toBeNull();
  expect(await used()).toBeUndefined();
  expect(await auth().api.getSession({ headers: headers[0] ?? new Headers() })).toBeNull();
});

test('the list tells when each was used last, and only of that person', async () => {
  await signedIn('Rowan', 1);
  const { id, sessions } = await signedIn('Mira', 2);
  const shown = await listSessions(id, now);
  expect(shown.map((session) => session.id)).toEqual(sessions.map((session) => session.id));
  expect(shown.map((session) => session.lastUsedAt)).toEqual(sessions.map((session) => session.updatedAt));
  expect(await listSessions(id, later(12 * 60 + 1))).toEqual([]);
});

test('ending the others leaves this one, and other people alone', async () => {
  const rowan = await signedIn('Rowan', 1);
  const mira = await signedIn('Mira', 3);
  const present = mira.sessions[1]?.id ?? '';
  await endOtherSessions(mira.id, present);
  expect((await listSessions(mira.id, now)).map((session) => session.id)).toEqual([present]);
  expect(await listSessions(rowan.id, now)).toHaveLength(1);
});

test('a change of how somebody signs in ends the others, and keeps one that it made itself', async () => {
  const { id: userId, email, sessions } = await signedIn('Mira', 3);
  const present = sessions[0]?.id ?? '';
  await endOthersAfter({ userId, sessionId: present }, async () => {
    await headersAfterSignIn(email);
  });
  const left = (await listSessions(userId, now)).map((session) => session.id);
  expect(left).toHaveLength(2);
  expect(left).toContain(present);
  expect(sessions.slice(1).some((session) => left.includes(session.id))).toBe(false);
});

test('a change that is refused ends nothing', async () => {
  const { id: userId, sessions } = await signedIn('Mira', 2);
  const refused = endOthersAfter({ userId, sessionId: sessions[0]?.id ?? '' }, () =>
    Promise.reject(new Error('wrong password')),
  );
  await expect(refused).rejects.toThrow('wrong password');
  expect(await listSessions(userId, now)).toHaveLength(2);
});

test('taking the right to sign in away ends every session at once', async () => {
  await makeStaff('Rowan', 'owner');
  const { id, email, headers } = await signedIn('Mira', 2);
  await changeStaff(await shownNow('person', id), {
    name: 'Mira',
    email,
    role: 'bench',
    initials: 'MI',
    isActive: false,
  });
  for (const one of headers) expect(await auth().api.getSession({ headers: one })).toBeNull();
});

test('a new role counts from the next click (ASVS 5.0, 8.3.2)', async () => {
  await makeStaff('Rowan', 'owner');
  const { id, email, headers } = await signedIn('Mira', 1);
  await changeStaff(await shownNow('person', id), {
    name: 'Mira',
    email,
    role: 'front',
    initials: 'MI',
    isActive: true,
  });
  expect((await auth().api.getSession({ headers: headers[0] ?? new Headers() }))?.user.role).toBe('front');
});
