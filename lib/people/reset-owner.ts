import { db } from '@/lib/db/client';
import { Refusal } from '@/lib/outcome';
import { type ResetOptions, resetPassword } from './reset-password';

/**
 * Gives an active owner a temporary password by address, for whoever may log in to the machine itself.
 * Refuses an address that no active owner signs in with, and names those that would do.
 */
export async function resetOwner(
  email: string,
  options: Omit<ResetOptions, 'by'>,
): Promise<{ temporaryPassword: string }> {
  const owners = await db.user.findMany({
    where: { role: 'owner', isActive: true },
    select: { id: true, email: true },
    orderBy: { email: 'asc' },
  });
  const owner = owners.find((candidate) => candidate.email === email.trim().toLowerCase());
  if (!owner) {
    const known = owners.map((candidate) => candidate.email).join(', ');
    throw new Refusal('not-found', `No owner signs in with ${email}. Owners: ${known || 'none'}.`);
  }
  return resetPassword(owner.id, { ...options, by: null });
}
