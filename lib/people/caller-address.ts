import { createHash } from 'node:crypto';
import { config } from '@/lib/config';

/**
 * The network address of whoever sent a request, for counting attempts; null when it cannot be known.
 *
 * Only a proxy that overwrites x-forwarded-for can be believed (TRUSTED_PROXY=on); its last entry is the one that this
 * proxy wrote. Without a proxy anybody could send the header and dress every attempt as a new caller.
 */
export function callerAddress(headers: Headers): string | null {
  if (!config.isBehindProxy) return null;
  const last = headers.get('x-forwarded-for')?.split(',').at(-1)?.trim();
  return last ? last : null;
}

/** A stable key for counting that keeps no personal data: attemptKey('sign-in', address, 'mira@example.org'). */
export function attemptKey(purpose: string, ...facts: readonly string[]): string {
  const digest = createHash('sha256').update(facts.join('\n')).digest('base64url');
  return `${purpose}:${digest}`;
}
