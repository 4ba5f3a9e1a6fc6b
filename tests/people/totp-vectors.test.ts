import { symmetricEncrypt } from 'better-auth/crypto';
import * as OTPAuth from 'otpauth';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { db } from '@/lib/db/client';
import { auth } from '@/lib/people/auth';
import { passSecondStep } from '@/lib/people/second-step';
import { resetDatabase, useDatabase } from '@/tests/database';
import { headersAfterSignIn, makeStaff } from './staff';

useDatabase();
beforeEach(resetDatabase);
afterEach(() => vi.useRealTimers());

/** The seed of RFC 6238 Appendix B, as an authenticator app and the other library hold it. */
const SEED = '12345678901234567890';
const app = new OTPAuth.TOTP({
  secret: OTPAuth.Secret.fromUTF8(SEED),
  algorithm: 'SHA1',
  digits: 6,
  period: 30,
});

/** Somebody whose second step is on with this very seed, kept as the auth library keeps it. */
async function withSeed() {
  const { id: userId, email } = await makeStaff('Mira', 'bench');
  const { secretConfig } = await auth().$context;
  const secret = await symmetricEncrypt({ key: secretConfig, data: SEED });
  const backupCodes = await symmetricEncrypt({ key: secretConfig, data: '[]' });
  await db.twoFactor.create({ data: { id: 'two-factor', userId, secret, backupCodes, verified: true } });
  await db.user.update({ where: { id: userId }, data: { twoFactorEnabled: true } });
  return { userId, email };
}

/** Gives the password and then a code at an instant, in seconds since 1970. */
async function passAt(seconds: number, email: string, code: string) {
  vi.useFakeTimers({ now: seconds * 1000, toFake: ['Date'] });
  const headers = await headersAfterSignIn(email);
  return passSecondStep({ code, headers, now: new Date() });
}

// RFC 6238 Appendix B, SHA-1 rows, eight digits; a six-digit code is their last six (RFC 4226 section 5.3: modulo 10^d).
test.each([
  [59, '94287082'],
  [1_111_111_109, '07081804'],
  [1_111_111_111, '14050471'],
  [1_234_567_890, '89005924'],
  [2_000_000_000, '69279037'],
  [20_000_000_000, '65353130'],
])(
  'at %i seconds the sign-in takes the end of the published %s, and the other library agrees',
  async (seconds, published) => {
    const code = published.slice(-6);
    expect(app.generate({ timestamp: seconds * 1000 })).toBe(code);
    const { email } = await withSeed();
    expect(await passAt(seconds, email, code)).toBe('passed');
  },
);

test.each([
  ['the step before', -30, 'passed'],
  ['the step after', 30, 'passed'],
  ['two steps before', -60, 'wrong'],
  ['two steps after', 60, 'wrong'],
] as const)('a code of %s: one step of skew at most (RFC 6238 section 5.2)', async (_name, off, answer) => {
  const { email } = await withSeed();
  const middle = 1_795_000_005;
  const code = app.generate({ timestamp: (middle + off) * 1000 });
  expect(await passAt(middle, email, code)).toBe(answer);
});

// With one step of skew a code fits from the step before its own to the step after: 45 seconds on both sides of its middle.
test('a code that passed as soon as it fitted is not taken as long as it fits', async () => {
  const { email } = await withSeed();
  const middle = 1_795_000_005;
  const code = app.generate({ timestamp: middle * 1000 });
  expect(await passAt(middle - 44, email, code)).toBe('passed');
  expect(await passAt(middle, email, code)).toBe('used');
  expect(await passAt(middle + 44, email, code)).toBe('used');
  expect(await db.session.count()).toBe(1);
});

test('of one code sent eight times at once one opens a session', async () => {
  const { email } = await withSeed();
  const middle = 1_795_000_005;
  vi.useFakeTimers({ now: middle * 1000, toFake: ['Date'] });
  const code = app.generate({ timestamp: middle * 1000 });
  const headers: Headers[] = [];
  for (let i = 0; i < 8; i += 1) headers.push(await headersAfterSignIn(email));
  const answers = await Promise.all(
    headers.map((each) => passSecondStep({ code, headers: each, now: new Date() })),
  );
  expect(answers.filter((answer) => answer === 'passed')).toHaveLength(1);
  expect(answers.filter((answer) => answer === 'used')).toHaveLength(7);
  expect(await db.session.count()).toBe(1);
});
