import { randomUUID } from 'node:crypto';
import { db } from '@/lib/db/client';
import type { Tx } from '@/lib/db/transaction';

/**
 * A password that somebody else has seen opens the account, and then has to be replaced before anything else.
 *
 * The marker is a row of the auth library's own table. Its `expiresAt` lies far ahead, because the library deletes
 * rows past that date and a password whose marker is gone would count as the person's own.
 */
const FAR_AHEAD = new Date('9999-01-01T00:00:00Z');
const WITHOUT_END = 'without-end';

export function temporaryPasswordKey(userId: string): string {
  return `temporary-password:${userId}`;
}

/** Marks the password of an account as temporary, usable for signing in until an instant or without end. */
export async function markTemporaryPassword(tx: Tx, userId: string, until: Date | null): Promise<void> {
  const identifier = temporaryPasswordKey(userId);
  await tx.verification.deleteMany({ where: { identifier } });
  const value = until ? until.toISOString() : WITHOUT_END;
  await tx.verification.create({ data: { id: randomUUID(), identifier, value, expiresAt: FAR_AHEAD } });
}

/** Whether what a marker says has passed. */
export function isOutdated(value: string, now: Date): boolean {
  return value !== WITHOUT_END && now.getTime() >= Date.parse(value);
}

export async function hasTemporaryPassword(userId: string): Promise<boolean> {
  return (await db.verification.count({ where: { identifier: temporaryPasswordKey(userId) } })) > 0;
}

/** After the person has chosen a password of their own. */
export async function clearTemporaryPassword(userId: string): Promise<void> {
  await db.verification.deleteMany({ where: { identifier: temporaryPasswordKey(userId) } });
}
