import { randomUUID } from 'node:crypto';
import { APIError } from 'better-auth/api';
import { symmetricDecrypt } from 'better-auth/crypto';
import { db } from '@/lib/db/client';
import { Refusal } from '@/lib/outcome';
import { auth } from './auth';
import { asWrongPassword, refuseTooManyTries } from './change-password';
import { otpauthAddress } from './rules/otpauth';
import { isFirstUse } from './second-step';
import { endOthersAfter } from './sessions';

type Asking = { userId: string; sessionId: string; password: string; headers: Headers; now: Date };

/** Begins turning the second step on: makes a key and backup codes, which count only once a code has confirmed them. */
export async function beginSecondStep({ userId, password, headers, now }: Asking): Promise<void> {
  await refuseTooManyTries(userId, now);
  try {
    await auth().api.enableTwoFactor({ body: { password, method: 'totp' }, headers });
  } catch (error) {
    throw asWrongPassword(error, 'password');
  }
}

/** The otpauth address of a key that waits for its first code; null when none waits. */
export async function readPendingKey(
  person: { id: string; email: string },
  issuer: string,
): Promise<string | null> {
  const row = await db.twoFactor.findFirst({
    where: { userId: person.id, verified: false },
    select: { secret: true },
  });
  if (!row) return null;
  const { secretConfig } = await auth().$context;
  const secret = await symmetricDecrypt({ key: secretConfig, data: row.secret });
  return otpauthAddress({ issuer, account: person.email, secret });
}

/** Turns the second step on with the first code; from now on signing in asks for one, and other devices have to. */
export async function confirmSecondStep(o: {
  userId: string;
  sessionId: string;
  code: string;
  headers: Headers;
  now: Date;
}): Promise<void> {
  const code = o.code.replace(/\s/g, '');
  await refuseTooManyTries(o.userId, o.now);
  try {
    await endOthersAfter(o, async () => {
      await auth().api.verifyTOTP({ body: { code }, headers: o.headers });
    });
  } catch (error) {
    if (!(error instanceof APIError) || error.body?.code !== 'INVALID_CODE') throw error;
    throw new Refusal('invalid', 'This code does not fit. Take the one the app shows now', 'code');
  }
  await isFirstUse(o.userId, code, o.now);
  await showBackupCodes(o.userId, o.now);
}

/** Turns the second step off, and ends the sessions of other devices. */
export async function endSecondStep({ userId, sessionId, password, headers, now }: Asking): Promise<void> {
  await refuseTooManyTries(userId, now);
  try {
    await endOthersAfter({ userId, sessionId }, async () => {
      await auth().api.disableTwoFactor({ body: { password }, headers });
    });
  } catch (error) {
    throw asWrongPassword(error, 'password');
  }
}

/** Replaces the backup codes; the old ones stop working. */
export async function renewBackupCodes({ userId, password, headers, now }: Asking): Promise<void> {
  await refuseTooManyTries(userId, now);
  try {
    await auth().api.generateBackupCodes({ body: { password }, headers });
  } catch (error) {
    throw asWrongPassword(error, 'password');
  }
  await showBackupCodes(userId, now);
}

const SHOWN_MINUTES = 10;

/** The backup codes, for ten minutes after they were made; null later, so that an unattended screen gives nothing away. */
export async function readShownBackupCodes(userId: string, now: Date): Promise<readonly string[] | null> {
  const identifier = shownKey(userId);
  const isShown = await db.verification.count({ where: { identifier, expiresAt: { gt: now } } });
  if (isShown === 0) return null;
  const { backupCodes } = await auth().api.viewBackupCodes({ body: { userId } });
  return backupCodes;
}

async function showBackupCodes(userId: string, now: Date): Promise<void> {
  const identifier = shownKey(userId);
  const expiresAt = new Date(now.getTime() + SHOWN_MINUTES * 60_000);
  await db.verification.deleteMany({ where: { identifier } });
  await db.verification.create({ data: { id: randomUUID(), identifier, value: userId, expiresAt } });
}

function shownKey(userId: string): string {
  return `backup-codes-shown:${userId}`;
}
