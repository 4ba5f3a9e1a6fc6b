import { symmetricEncrypt } from 'better-auth/crypto';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { db } from '@/lib/db/client';
import { auth } from '@/lib/people/auth';
import { backupCodeDigest, readShownBackupCodes } from '@/lib/people/backup-codes';
import { passSecondStep } from '@/lib/people/second-step';
import { signIn } from '@/lib/people/sign-in';
import {
  beginSecondStep,
  confirmSecondStep,
  endSecondStep,
  readPendingKey,
  renewBackupCodes,
} from '@/lib/people/turn-second-step';
import { resetDatabase, useDatabase } from '@/tests/database';
import { headersAfterSignIn, makeStaff, PASSWORD, withCookiesOf } from './staff';

useDatabase();
beforeEach(resetDatabase, 30_000);
afterEach(() => vi.useRealTimers());

/** Makes somebody whose second step is on, and returns how their app makes codes. */
async function withSecondStep() {
  const { id: userId, email } = await makeStaff('Mira', 'bench');
  const headers = await headersAfterSignIn(email);
  const now = new Date();
  await beginSecondStep({ userId, sessionId: '', password: PASSWORD, headers, now });
  const address = await readPendingKey({ id: userId, email }, 'Quay & Alder');
  const key = new URL(address ?? '').searchParams.get('secret') ?? '';
  const codeNow = async () => (await auth().api.generateTOTP({ body: { secret: fromBase32(key) } })).code;
  const confirmedBy = await codeNow();
  await confirmSecondStep({ userId, sessionId: '', code: confirmedBy, headers, now });
  return { userId, email, codeNow, confirmedBy };
}

test('once on, the password alone opens no session', async () => {
  const { userId, email } = await withSecondStep();
  await db.session.deleteMany();
  const answer = await signIn({ email, password: PASSWORD, headers: new Headers(), now: new Date() });
  expect(answer).toEqual({ outcome: 'second-step' });
  expect(await db.session.count({ where: { userId } })).toBe(0);
});

test('a code from the app opens the session, and is accepted once (RFC 6238 section 5.2)', async () => {
  const { email, codeNow } = await withSecondStep();
  await db.attempt.deleteMany();
  await db.session.deleteMany();
  const code = await codeNow();
  const now = new Date();
  const first = await passSecondStep({ code, headers: await headersAfterSignIn(email), now });
  expect(first).toBe('passed');
  expect(await db.session.count()).toBe(1);
  const again = await passSecondStep({ code, headers: await headersAfterSignIn(email), now });
  expect(again).toBe('used');
  expect(await db.session.count()).toBe(1);
});

test('the code that turned the second step on does not sign in as long as it fits', async () => {
  // At the beginning of its half minute it fits for 59 seconds more (RFC 6238 section 5.2).
  const begin = 1_795_000_020_000;
  vi.useFakeTimers({ now: begin, toFake: ['Date'] });
  const { email, confirmedBy } = await withSecondStep();
  vi.setSystemTime(begin + 59_000);
  const headers = await headersAfterSignIn(email);
  expect(await passSecondStep({ code: confirmedBy, headers, now: new Date() })).toBe('used');
});

test('a wrong code is told as wrong, and five of them end the sign-in', async () => {
  const { email, codeNow } = await withSecondStep();
  const headers = await headersAfterSignIn(email);
  const wrong = (await codeNow()) === '000000' ? '111111' : '000000';
  const now = new Date();
  for (let i = 0; i < 5; i += 1) expect(await passSecondStep({ code: wrong, headers, now })).toBe('wrong');
  expect(await passSecondStep({ code: wrong, headers, now })).toBe('start-again');
});

test('ten wrong codes in a row lock the account for an hour, right code or not', async () => {
  const { userId, email, codeNow } = await withSecondStep();
  await db.attempt.deleteMany();
  const now = new Date();
  for (let round = 0; round < 2; round += 1) {
    const headers = await headersAfterSignIn(email);
    for (let i = 0; i < 5; i += 1) await passSecondStep({ code: 'wrong', headers, now });
  }
  const headers = await headersAfterSignIn(email);
  expect(await passSecondStep({ code: await codeNow(), headers, now })).toBe('locked');
  const row = await db.twoFactor.findFirst({ where: { userId }, select: { lockedUntil: true } });
  expect((row?.lockedUntil?.getTime() ?? 0) - now.getTime()).toBeGreaterThan(59 * 60_000);
  await db.twoFactor.updateMany({ where: { userId }, data: { lockedUntil: new Date(now.getTime() - 1000) } });
  const afterwards = await headersAfterSignIn(email);
  expect(await passSecondStep({ code: await codeNow(), headers: afterwards, now })).toBe('passed');
});

test('turning it on signs out every other device', async () => {
  const { id: userId, email } = await makeStaff('Mira', 'bench');
  const elsewhere = await headersAfterSignIn(email);
  const headers = await headersAfterSignIn(email);
  const now = new Date();
  const sessionId = (await auth().api.getSession({ headers }))?.session.id ?? '';
  await beginSecondStep({ userId, sessionId, password: PASSWORD, headers, now });
  expect(await auth().api.getSession({ headers: elsewhere })).not.toBeNull();
  const key = new URL((await readPendingKey({ id: userId, email }, 'Quay & Alder')) ?? '').searchParams.get(
    'secret',
  );
  const { code } = await auth().api.generateTOTP({ body: { secret: fromBase32(key ?? '') } });
  await confirmSecondStep({ userId, sessionId, code, headers, now });
  expect(await auth().api.getSession({ headers: elsewhere })).toBeNull();
  expect(await db.session.count({ where: { userId } })).toBe(1);
});

test('a backup code signs in once', async () => {
  const { userId, email } = await withSecondStep();
  const now = new Date();
  const [code = ''] = (await readShownBackupCodes(userId, now)) ?? [];
  expect(code).toMatch(/^([a-z2-9]{5}-){4}[a-z2-9]{5}$/);
  expect(await passSecondStep({ code, headers: await headersAfterSignIn(email), now })).toBe('passed');
  expect(await passSecondStep({ code, headers: await headersAfterSignIn(email), now })).toBe('wrong');
});

test('backup codes are kept as digests, and each is typed in any case', async () => {
  const { userId, email } = await withSecondStep();
  const now = new Date();
  const codes = (await readShownBackupCodes(userId, now)) ?? [];
  const kept = async () => (await db.twoFactor.findFirst({ where: { userId } }))?.backupCodes ?? '';
  expect(JSON.parse(await kept())).toEqual(codes.map(backupCodeDigest));
  const code = codes[0]?.toUpperCase() ?? '';
  expect(await passSecondStep({ code, headers: await headersAfterSignIn(email), now })).toBe('passed');
  expect(JSON.parse(await kept())).toEqual(codes.slice(1).map(backupCodeDigest));
});

test('codes that an earlier version encrypted go on working, once each, and are digests afterwards', async () => {
  const { userId, email } = await withSecondStep();
  const older = ['aB3dE-fG7hJ', 'kL9mN-pQ2rS'];
  const { secretConfig } = await auth().$context;
  const data = { backupCodes: await symmetricEncrypt({ key: secretConfig, data: JSON.stringify(older) }) };
  await db.twoFactor.updateMany({ where: { userId }, data });
  const now = new Date();
  const pass = async (code: string) =>
    passSecondStep({ code, headers: await headersAfterSignIn(email), now });
  expect(await pass('aB3dE-fG7hJ')).toBe('passed');
  expect(await pass('aB3dE-fG7hJ')).toBe('wrong');
  const row = await db.twoFactor.findFirst({ where: { userId } });
  expect(JSON.parse(row?.backupCodes ?? '')).toEqual([backupCodeDigest('kL9mN-pQ2rS')]);
  expect(await pass('kL9mN-pQ2rS')).toBe('passed');
});

test('new backup codes replace the old ones', async () => {
  const { userId, email } = await withSecondStep();
  const now = new Date();
  const [old = ''] = (await readShownBackupCodes(userId, now)) ?? [];
  const pass = (code: string, headers: Headers) => passSecondStep({ code, headers, now });
  const { headers } = await auth().api.verifyBackupCode({
    body: { code: backupCodeDigest(old) },
    headers: await headersAfterSignIn(email),
    returnHeaders: true,
  });
  await renewBackupCodes({
    ...{ userId, sessionId: '', password: PASSWORD, now },
    headers: withCookiesOf(headers),
  });
  const fresh = (await readShownBackupCodes(userId, now)) ?? [];
  expect(fresh).toHaveLength(10);
  expect(fresh).not.toContain(old);
  expect(await pass(old, await headersAfterSignIn(email))).toBe('wrong');
  expect(await pass(fresh[3] ?? '', await headersAfterSignIn(email))).toBe('passed');
});

test('backup codes are shown for ten minutes', async () => {
  const { userId } = await withSecondStep();
  const in11Minutes = new Date(Date.now() + 11 * 60_000);
  expect(await readShownBackupCodes(userId, new Date())).toHaveLength(10);
  expect(await readShownBackupCodes(userId, in11Minutes)).toBeNull();
  expect(await db.verification.count({ where: { identifier: { startsWith: 'backup-codes-shown' } } })).toBe(
    0,
  );
});

test('turning it on needs the password, and a code that fits', async () => {
  const { id: userId, email } = await makeStaff('Mira', 'bench');
  const headers = await headersAfterSignIn(email);
  const now = new Date();
  await expect(
    beginSecondStep({ userId, sessionId: '', password: 'not mine at all', headers, now }),
  ).rejects.toMatchObject({
    code: 'invalid',
    field: 'password',
  });
  expect(await readPendingKey({ id: userId, email }, 'Quay & Alder')).toBeNull();
  await beginSecondStep({ userId, sessionId: '', password: PASSWORD, headers, now });
  await expect(
    confirmSecondStep({ userId, sessionId: '', code: 'nonsense', headers, now }),
  ).rejects.toMatchObject({
    field: 'code',
  });
  expect(await db.user.findUnique({ where: { id: userId } })).toMatchObject({ twoFactorEnabled: false });
});

test('turning it off needs the password, and then the password alone signs in', async () => {
  const { userId, email } = await withSecondStep();
  const now = new Date();
  const codes = await readShownBackupCodes(userId, now);
  const { headers } = await auth().api.verifyBackupCode({
    body: { code: backupCodeDigest(codes?.[1] ?? '') },
    headers: await headersAfterSignIn(email),
    returnHeaders: true,
  });
  const signedIn = withCookiesOf(headers);
  await expect(
    endSecondStep({ userId, sessionId: '', password: 'wrong wrong wrong', headers: signedIn, now }),
  ).rejects.toMatchObject({ field: 'password' });
  await endSecondStep({ userId, sessionId: '', password: PASSWORD, headers: signedIn, now });
  const answer = await signIn({ email, password: PASSWORD, headers: new Headers(), now });
  expect(answer).toEqual({ outcome: 'signed-in' });
});

test('a page that is out of date, a password of any length, a session that has ended are refused in words', async () => {
  const { id: userId, email } = await makeStaff('Mira', 'bench');
  const headers = await headersAfterSignIn(email);
  const asking = { userId, sessionId: '', password: PASSWORD, headers, now: new Date() };
  await expect(renewBackupCodes(asking)).rejects.toMatchObject({ name: 'Refusal', code: 'conflict' });
  const long = beginSecondStep({ ...asking, password: 'é'.repeat(200) });
  await expect(long).rejects.toMatchObject({ name: 'Refusal', code: 'invalid', field: 'password' });
  await expect(confirmSecondStep({ ...asking, code: '123456' })).rejects.toMatchObject({
    name: 'Refusal',
    code: 'conflict',
  });
  await db.session.deleteMany();
  await expect(beginSecondStep(asking)).rejects.toMatchObject({ name: 'Refusal', code: 'not-allowed' });
  const again = { ...asking, headers: await headersAfterSignIn(email) };
  await beginSecondStep(again);
  await db.twoFactor.updateMany({ data: { verified: true } });
  await expect(beginSecondStep(again)).rejects.toMatchObject({ name: 'Refusal', code: 'conflict' });
});

function fromBase32(key: string): string {
  const bits = [...key].map((letter) =>
    'ABCDEFGHIJKLMNOPQRSTUVWXYZ234567'.indexOf(letter).toString(2).padStart(5, '0'),
  );
  const bytes = bits.join('').match(/.{8}/g) ?? [];
  return bytes.map((byte) => String.fromCharCode(Number.parseInt(byte, 2))).join('');
}
