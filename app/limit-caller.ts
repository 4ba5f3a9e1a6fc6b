import 'server-only';
import { headers } from 'next/headers';
import { now } from '@/lib/clock';
import { attemptKey, callerAddress } from '@/lib/people/caller-address';
import { type AttemptAnswer, limitAttempts } from '@/lib/people/limit-attempts';

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
