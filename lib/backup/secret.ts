import { hkdfSync } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { authSecret, config } from '@/lib/config';

/** Tells one secret of the app from another: worked out from it, and of no use for working it out. */
export function secretMark(secret: string): string {
  return Buffer.from(hkdfSync('sha256', secret, '', 'mendpost backup mark', 32)).toString('hex');
}

export function secretFile(): string {
  return path.join(config.dataDir, 'secret');
}

/**
 * Whether the app's secret was made by the program and lies in the data folder: it would be lost with the folder, so it goes
 * into backups. One that was set as AUTH_SECRET is kept by whoever set it, and stays out of them.
 */
export function isSecretKept(): boolean {
  return existsSync(secretFile()) && readFileSync(secretFile(), 'utf8').trim() === authSecret();
}
