import { createHmac, randomInt, randomUUID } from 'node:crypto';
import { symmetricDecrypt, symmetricEncrypt } from 'better-auth/crypto';
import { z } from 'zod';
import { authSecret } from '@/lib/config';
import { db } from '@/lib/db/client';
import { drawBackupCode } from './rules/passwords';

const AMOUNT = 10;
const SHOWN_MINUTES = 10;
const texts = z.array(z.string());
const DIGEST = /^[\w-]{43}$/;

/** Ten backup codes, each good for one sign-in. */
export function drawBackupCodes(): string[] {
  return Array.from({ length: AMOUNT }, () => drawBackupCode((n) => randomInt(n)));
}

/**
 * A backup code as it is kept and compared: a keyed hash. A fast one is enough for a code of 124 bits (ASVS 5.0 6.5.2 asks
 * for a slow one below 112); the key beside it protects codes of 59 bits that an earlier version gave out.
 */
export function backupCodeDigest(code: string): string {
  const typed = code.replace(/\s/g, '');
  // Codes of now have small letters only; those of an earlier version have both, in two groups.
  const folded = typed.length > 20 ? typed.toLowerCase() : typed;
  return createHmac('sha256', authSecret()).update(`backup-code:${folded}`).digest('base64url');
}

/**
 * How the auth library keeps its list: it hands over the codes it has drawn, or the digests that are left after one was
 * used, and gets back digests. What an earlier version encrypted is read once more, and is digests from its next use on.
 */
export const keptAsDigests = {
  encrypt: async (list: string) =>
    JSON.stringify(
      texts.parse(JSON.parse(list)).map((one) => (DIGEST.test(one) ? one : backupCodeDigest(one))),
    ),
  decrypt: async (stored: string) => {
    if (stored.startsWith('[')) return stored;
    const codes = await symmetricDecrypt({ key: authSecret(), data: stored });
    return JSON.stringify(texts.parse(JSON.parse(codes)).map(backupCodeDigest));
  },
};

/** Keeps codes encrypted for the ten minutes in which their owner may look at them. */
export async function showBackupCodes(userId: string, codes: readonly string[], now: Date): Promise<void> {
  const identifier = shownKey(userId);
  const expiresAt = new Date(now.getTime() + SHOWN_MINUTES * 60_000);
  const value = await symmetricEncrypt({ key: authSecret(), data: JSON.stringify(codes) });
  await db.verification.deleteMany({ where: { identifier } });
  await db.verification.create({ data: { id: randomUUID(), identifier, value, expiresAt } });
}

/** The backup codes, for ten minutes after they were made; null later, when the last readable copy is deleted. */
export async function readShownBackupCodes(userId: string, now: Date): Promise<readonly string[] | null> {
  const identifier = shownKey(userId);
  await db.verification.deleteMany({ where: { identifier, expiresAt: { lte: now } } });
  const row = await db.verification.findFirst({ where: { identifier }, select: { value: true } });
  if (!row) return null;
  return texts.parse(JSON.parse(await symmetricDecrypt({ key: authSecret(), data: row.value })));
}

function shownKey(userId: string): string {
  return `backup-codes-shown:${userId}`;
}
