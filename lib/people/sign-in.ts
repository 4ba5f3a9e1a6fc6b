import { APIError } from 'better-auth/api';
import { db } from '@/lib/db/client';
import { log } from '@/lib/log';
import { auth } from './auth';
import { attemptKey, callerAddress } from './caller-address';
import { forgetAttempts, limitEach } from './limit-attempts';
import { hashPassword, isHashedAsNow } from './password-hash';

export type SignInAnswer =
  | { outcome: 'signed-in' | 'second-step' | 'refused' }
  | { outcome: 'wait'; seconds: number };

const QUARTER_HOUR = 900;
const HOUR = 3600;
const PER_CALLER_AND_ACCOUNT = 5;
const PER_CALLER = 30;
const PER_ACCOUNT = 50;

/**
 * Signs a member of staff in with address and password; the session's cookie is set on the answer under way.
 *
 * A wrong password, an unknown address, a deactivated account and an outdated temporary password all give 'refused',
 * after the same work, so that nobody learns which addresses exist.
 */
export async function signIn(o: {
  email: string;
  password: string;
  headers: Headers;
  now: Date;
}): Promise<SignInAnswer> {
  const { email, password, headers, now } = o;
  const caller = callerAddress(headers);
  const pairKey = attemptKey('sign-in', caller ?? '', email);
  const counted = [
    { key: pairKey, max: PER_CALLER_AND_ACCOUNT, windowSeconds: QUARTER_HOUR },
    { key: attemptKey('sign-in-account', email), max: PER_ACCOUNT, windowSeconds: HOUR },
  ];
  if (caller) {
    const key = attemptKey('sign-in-caller', caller);
    counted.push({ key, max: PER_CALLER, windowSeconds: QUARTER_HOUR });
  }
  const limit = await limitEach(counted, now);
  if (!limit.allowed) {
    log.info('sign-in', { kind: 'wait' });
    return { outcome: 'wait', seconds: limit.waitSeconds };
  }
  try {
    const answer = await auth().api.signInEmail({ body: { email, password }, headers });
    await forgetAttempts(pairKey);
    await hashAsNow(email, password);
    const outcome = 'twoFactorRedirect' in answer ? 'second-step' : 'signed-in';
    log.info('sign-in', { kind: outcome });
    return { outcome };
  } catch (error) {
    if (!(error instanceof APIError) || error.statusCode >= 500) throw error;
    log.info('sign-in', { kind: 'refused', ...(error.body?.code && { code: error.body.code }) });
    return { outcome: 'refused' };
  }
}

// A password that an earlier version hashed is hashed anew while it is at hand. One that was changed meanwhile stays.
async function hashAsNow(email: string, password: string): Promise<void> {
  const account = await db.account.findFirst({
    where: { user: { email }, providerId: 'credential' },
    select: { id: true, password: true },
  });
  if (!account?.password || isHashedAsNow(account.password)) return;
  const data = { password: await hashPassword(password) };
  await db.account.updateMany({ where: { id: account.id, password: account.password }, data });
}
