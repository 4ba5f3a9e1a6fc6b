import { APIError } from 'better-auth/api';
import { Refusal, type RefusalCode } from '@/lib/outcome';

/** Answers of the library that a person can come upon, by its code: with a page that is out of date, or by trying too often. */
const ANSWERS: Record<string, [code: RefusalCode, sentence: string]> = {
  TOTP_ALREADY_ENABLED: ['conflict', 'The second step is on already. Load the page again'],
  TOTP_NOT_ENABLED: ['conflict', 'No key waits for its first code any more. Load the page again'],
  TWO_FACTOR_NOT_ENABLED: ['conflict', 'The second step is off by now. Load the page again'],
  ACCOUNT_TEMPORARILY_LOCKED: ['too-many', 'Too many wrong codes. Wait an hour, then try again'],
  // The session was there when the form came in, and ended before the library looked.
  UNAUTHORIZED: ['not-allowed', 'You were signed out meanwhile. Sign in and try again'],
};

/**
 * Turns what the library answers a signed-in person into a refusal: a wrong password at its `field`, the others as a whole.
 * Anything else is a bug and stays one.
 */
export function asRefusal(error: unknown, field: string): unknown {
  if (!(error instanceof APIError)) return error;
  const code = error.body?.code ?? '';
  // One that is longer than any password here is not compared at all.
  if (code === 'INVALID_PASSWORD' || code === 'PASSWORD_TOO_LONG') {
    return new Refusal('invalid', 'This is not your present password', field);
  }
  if (code === 'INVALID_CODE')
    return new Refusal('invalid', 'This code does not fit. Take the one the app shows now', field);
  const answer = ANSWERS[code];
  return answer ? new Refusal(...answer) : error;
}
