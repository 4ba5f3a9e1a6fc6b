import { attemptKey } from './caller-address';
import { giveBackAttempt, limitAttempts } from './limit-attempts';

const HOUR = 3600;
/** Numbers that nothing has, in an hour: of one caller, where callers can be told apart, and of everybody together. */
export const MISSES_AN_HOUR = { caller: 20, everybody: 400 };

export type SoughtAnswer<T> = { allowed: true; found: T | null } | { allowed: false; waitSeconds: number };

/**
 * Looks something up by a number that somebody named, and counts only the numbers that nothing has.
 *
 * A number carries a check character, so a mistyped one is told apart before it is looked up; who misses again and again
 * is guessing. Each look-up is counted before it is made and given back when it found something, so that guesses sent
 * at once are all counted; a spent count stops hits too, or guessing would go on.
 */
export async function limitMisses<T>(o: {
  /** the network address, or null where it cannot be known */
  caller: string | null;
  now: Date;
  lookUp: () => Promise<T | null>;
}): Promise<SoughtAnswer<T>> {
  const keys: [string, number][] = [[attemptKey('missed', 'everybody'), MISSES_AN_HOUR.everybody]];
  if (o.caller) keys.push([attemptKey('missed', 'caller', o.caller), MISSES_AN_HOUR.caller]);
  let waitSeconds = 0;
  for (const [key, max] of keys) {
    const answer = await limitAttempts(key, { max, windowSeconds: HOUR, now: o.now });
    waitSeconds = Math.max(waitSeconds, answer.waitSeconds);
  }
  if (waitSeconds > 0) return { allowed: false, waitSeconds };
  const found = await o.lookUp();
  if (found !== null) for (const [key] of keys) await giveBackAttempt(key);
  return { allowed: true, found };
}
