import { createHash } from 'node:crypto';

/** The key under which terms are kept, worked out from their text: 43 letters, digits, - and _; empty for no text. */
export function termsId(text: string): string {
  return text === '' ? '' : createHash('sha256').update(text).digest('base64url');
}
