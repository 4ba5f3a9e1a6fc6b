import { APIError } from 'better-auth/api';
import { db } from '@/lib/db/client';
import { log } from '@/lib/log';
import { auth } from './auth';
import { backupCodeDigest } from './backup-codes';
import { attemptKey } from './caller-address';
import { limitAttempts } from './limit-attempts';

type Step = { code: string; headers: Headers; now: Date };
export type SecondStepAnswer = 'passed' | 'wrong' | 'used' | 'locked' | 'start-again';

/**
 * Checks the code of the second step, from the authenticator app (six digits) or a backup code, and signs in.
 *
 * The library allows five tries for each sign-in and locks the account for an hour after ten failures in a row. It does not remember codes that passed, so that is done here: RFC 6238 section 5.2 wants each accepted once.
 */
export async function passSecondStep(o: Step): Promise<SecondStepAnswer> {
  const answer = await checkCode(o);
  log.info('second-step', { kind: answer });
  return answer;
}

async function checkCode(o: Step): Promise<SecondStepAnswer> {
  const code = o.code.replace(/\s/g, '');
  try {
    if (!/^\d{6}$/.test(code)) {
      await auth().api.verifyBackupCode({ body: { code: backupCodeDigest(code) }, headers: o.headers });
      return 'passed';
    }
    const { token, user } = await auth().api.verifyTOTP({ body: { code }, headers: o.headers });
    if (await isFirstUse(user.id, code, o.now)) return 'passed';
    await db.session.deleteMany({ where: { token } });
    return 'used';
  } catch (error) {
    if (error instanceof APIError && error.statusCode < 500) return answerTo(error.body?.code);
    throw error;
  }
}

/** Marks a code as used; false when it was used before. A code passes for a minute and a half around its half minute. */
export async function isFirstUse(userId: string, code: string, now: Date): Promise<boolean> {
  const { allowed } = await limitAttempts(attemptKey('code', userId, code), {
    max: 1,
    windowSeconds: 120,
    now,
  });
  return allowed;
}

function answerTo(code: string | undefined): SecondStepAnswer {
  switch (code) {
    case 'INVALID_CODE':
    case 'INVALID_BACKUP_CODE':
      return 'wrong';
    case 'ACCOUNT_TEMPORARILY_LOCKED':
      return 'locked';
    default:
      return 'start-again';
  }
}
