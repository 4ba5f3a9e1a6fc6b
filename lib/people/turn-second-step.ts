import { symmetricDecrypt } from 'better-auth/crypto';
import { db } from '@/lib/db/client';
import { auth } from './auth';
import { asRefusal } from './auth-refusal';
import { drawBackupCodes, keptAsDigests, showBackupCodes } from './backup-codes';
import { refuseTooManyTries } from './change-password';
import { otpauthAddress } from './rules/otpauth';
import { isFirstUse } from './second-step';
import { endOthersAfter } from './sessions';

type Asking = { userId: string; sessionId: string; password: string; headers: Headers; now: Date };

/** Begins turning the second step on: makes a key, which counts only once a code has confirmed it. */
export async function beginSecondStep({ userId, password, headers, now }: Asking): Promise<void> {
  await refuseTooManyTries(userId, now);
  try {
    await auth().api.enableTwoFactor({ body: { password, method: 'totp' }, headers });
  } catch (error) {
    throw asRefusal(error, 'password');
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

/** Turns the second step on with the first code and gives backup codes; from now on signing in asks for one, and other devices have to. */
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
    throw asRefusal(error, 'code');
  }
  await isFirstUse(o.userId, code, o.now);
  const codes = drawBackupCodes();
  const backupCodes = await keptAsDigests.encrypt(JSON.stringify(codes));
  await db.twoFactor.updateMany({ where: { userId: o.userId }, data: { backupCodes } });
  await showBackupCodes(o.userId, codes, o.now);
}

/** Turns the second step off, and ends the sessions of other devices. */
export async function endSecondStep({ userId, sessionId, password, headers, now }: Asking): Promise<void> {
  await refuseTooManyTries(userId, now);
  try {
    await endOthersAfter({ userId, sessionId }, async () => {
      await auth().api.disableTwoFactor({ body: { password }, headers });
    });
  } catch (error) {
    throw asRefusal(error, 'password');
  }
}

/** Replaces the backup codes; the old ones stop working. */
export async function renewBackupCodes({ userId, password, headers, now }: Asking): Promise<void> {
  await refuseTooManyTries(userId, now);
  try {
    const { backupCodes } = await auth().api.generateBackupCodes({ body: { password }, headers });
    await showBackupCodes(userId, backupCodes, now);
  } catch (error) {
    throw asRefusal(error, 'password');
  }
}
