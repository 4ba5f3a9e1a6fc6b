import 'server-only';
import { headers } from 'next/headers';
import { now } from '@/lib/clock';
import { attemptKey, callerAddress } from '@/lib/people/caller-address';
import { type AttemptAnswer, limitAttempts } from '@/lib/people/limit-attempts';
import { limitMisses, type SoughtAnswer } from '@/lib/people/limit-misses';

/** Where no proxy tells callers apart, all of them together may do this many times what one may. */
const EVERYONE = 20;

/** Counts one attempt of whoever sent this request; without a trusted proxy all callers share one, wider, limit. */
export async function limitCaller(
  purpose: string,
  limit: { max: number; windowSeconds: number },
): Promise<AttemptAnswer> {
  const address = callerAddress(await headers());
  return limitAttempts(attemptKey(purpose, address ?? 'everyone'), {
    max: address ? limit.max : limit.max * EVERYONE,
    windowSeconds: limit.windowSeconds,
    now: now(),
  });
}

/** Reads what a number names, for whoever sent this request; too many numbers that nothing has, and it waits. */
export async function lookUpNumber<T>(
  number: string,
  read: () => Promise<T | null>,
): Promise<SoughtAnswer<T>> {
  return limitMisses({ number, caller: callerAddress(await headers()), now: now(), read });
}
