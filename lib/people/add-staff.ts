import { instantDaysAfter } from '@/lib/calendar/spans';
import { isUniqueViolation } from '@/lib/db/errors';
import { type Tx, transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { createAccount } from './create-account';
import { hashPassword } from './password-hash';
import { newPassword } from './random';
import { initialsOf } from './rules/initials';
import { TEMPORARY_PASSWORD_DAYS } from './rules/passwords';
import type { StaffInput } from './staff-input';
import { markTemporaryPassword } from './temporary-password';

export type AddedStaff = { id: string; temporaryPassword: string };

/**
 * Adds a member of staff and returns a temporary password, which nobody can read again.
 * Refuses an address or initials that somebody else has: initials sign bench checks and must point at one person.
 */
export async function addStaff(input: StaffInput, now: Date): Promise<AddedStaff> {
  const temporaryPassword = newPassword();
  const passwordHash = await hashPassword(temporaryPassword);
  const { name, email, role } = input;
  const initials = input.initials ?? initialsOf(name);
  try {
    return await transaction(async (tx) => {
      await refuseTaken(tx, { email, initials }, undefined);
      const id = await createAccount(tx, { name, email, role, initials, passwordHash });
      await markTemporaryPassword(tx, id, temporaryUntil(now));
      return { id, temporaryPassword };
    });
  } catch (error) {
    if (isUniqueViolation(error, 'auth_user_email_key')) throw emailTaken();
    throw error;
  }
}

/** When a temporary password given out now stops opening the account. */
export function temporaryUntil(now: Date): Date {
  return instantDaysAfter(now, TEMPORARY_PASSWORD_DAYS);
}

export async function refuseTaken(
  tx: Tx,
  wanted: { email: string; initials: string },
  exceptId: string | undefined,
): Promise<void> {
  const others = await tx.user.findMany({
    where: { OR: [{ email: wanted.email }, { initials: wanted.initials }] },
    select: { id: true, email: true, initials: true },
  });
  const taken = others.filter((other) => other.id !== exceptId);
  if (taken.some((other) => other.email === wanted.email)) throw emailTaken();
  if (taken.some((other) => other.initials === wanted.initials)) {
    throw new Refusal(
      'conflict',
      `Somebody has the initials ${wanted.initials} already; choose others`,
      'initials',
    );
  }
}

export function emailTaken(): Refusal {
  return new Refusal('conflict', 'Somebody signs in with this address already', 'email');
}
