import { hkdfSync } from 'node:crypto';

/** Tells one secret of the app from another: worked out from it, and of no use for working it out. */
export function secretMark(secret: string): string {
  return Buffer.from(hkdfSync('sha256', secret, '', 'mendpost backup mark', 32)).toString('hex');
}
