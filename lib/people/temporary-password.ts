import { db } from '@/lib/db/client';
import type { Tx } from '@/lib/db/transaction';

/*
 * A password that somebody else has seen opens the account until its instant has passed, and has to be replaced before anything
 * else. The person's own row says so: every page of the workshop reads it with the session.
 */

/** Marks the password of an account as temporary, usable for signing in until an instant or without end. */
export async function markTemporaryPassword(tx: Tx, userId: string, until: Date | null): Promise<void> {
  await tx.user.update({
    where: { id: userId },
    data: { hasTemporaryPassword: true, temporaryPasswordUntil: until },
    select: { id: true },
  });
}

/** Whether a password has stopped opening its account. */
export function isOutdated(
  user: { hasTemporaryPassword: boolean; temporaryPasswordUntil: Date | null },
  now: Date,
): boolean {
  const { hasTemporaryPassword, temporaryPasswordUntil: until } = user;
  return hasTemporaryPassword && until !== null && now.getTime() >= until.getTime();
}

/** After the person has chosen a password of their own. */
export async function clearTemporaryPassword(userId: string): Promise<void> {
  await db.user.updateMany({
    where: { id: userId },
    data: { hasTemporaryPassword: false, temporaryPasswordUntil: null },
  });
}
