import { randomUUID } from 'node:crypto';

const looksLikeOne = /^[A-Za-z0-9][A-Za-z0-9_-]{7,63}$/;

/**
 * The id of a request: the x-request-id of a proxy that is trusted, when it looks like an id, else a new one. Anybody
 * else could send any text, and it would stand in the log.
 *
 * chooseRequestId('a1b2c3d4e5', true) -> 'a1b2c3d4e5'; chooseRequestId('<b>', true) -> a new UUID
 */
export function chooseRequestId(given: unknown, isTrusted: boolean): string {
  return isTrusted && typeof given === 'string' && looksLikeOne.test(given) ? given : randomUUID();
}
