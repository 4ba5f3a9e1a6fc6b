import { Refusal } from '@/lib/outcome';
import { auth } from './auth';
import { asRefusal } from './auth-refusal';
import { attemptKey } from './caller-address';
import { isEasyToGuess } from './easy-password';
import { limitAttempts } from './limit-attempts';
import { PASSWORD_MAX, PASSWORD_MIN, type PasswordProblem, passwordProblem } from './rules/passwords';
import { clearTemporaryPassword } from './temporary-password';

const SENTENCES: Record<PasswordProblem, string> = {
  short: `The new password must have at least ${PASSWORD_MIN} characters`,
  long: `The new password may have ${PASSWORD_MAX} characters at most`,
  personal: 'Choose a new password that is not made of your name, your address or the workshop’s name',
  repeating: 'Choose a new password with more different characters',
};

const TOO_EASY =
  'This password, or one much like it, is among the first that are tried. Take a few words that do not belong together';

/**
 * Replaces the password of the signed-in person, ends their other sessions and starts a fresh one here.
 * Refuses a wrong present password (ten tries in a quarter of an hour) and a new one that is easy to guess.
 */
export async function changePassword(o: {
  person: { id: string; name: string; email: string };
  workshopName: string;
  currentPassword: string;
  newPassword: string;
  headers: Headers;
  now: Date;
}): Promise<void> {
  const { person, currentPassword, newPassword, headers, now } = o;
  const personal = [person.name, person.email, o.workshopName];
  const problem = passwordProblem(newPassword, personal);
  if (problem) throw new Refusal('invalid', SENTENCES[problem], 'newPassword');
  if (await isEasyToGuess(newPassword, personal)) throw new Refusal('invalid', TOO_EASY, 'newPassword');
  if (newPassword === currentPassword) {
    throw new Refusal('invalid', 'The new password must differ from the present one', 'newPassword');
  }
  await refuseTooManyTries(person.id, now);
  try {
    await auth().api.changePassword({
      body: { currentPassword, newPassword, revokeOtherSessions: true },
      headers,
    });
  } catch (error) {
    throw asRefusal(error, 'currentPassword');
  }
  await clearTemporaryPassword(person.id);
}

/** Guards everything that asks a signed-in person for the password again. */
export async function refuseTooManyTries(userId: string, now: Date): Promise<void> {
  const key = attemptKey('password-again', userId);
  const { allowed, waitSeconds } = await limitAttempts(key, { max: 10, windowSeconds: 900, now });
  if (allowed) return;
  const minutes = Math.ceil(waitSeconds / 60);
  throw new Refusal(
    'too-many',
    `Too many tries. Wait ${minutes} ${minutes === 1 ? 'minute' : 'minutes'}, then try again`,
  );
}
