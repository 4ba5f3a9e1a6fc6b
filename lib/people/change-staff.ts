import { isUniqueViolation } from '@/lib/db/errors';
import { type Tx, transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { emailTaken, refuseTaken } from './add-staff';
import { initialsOf } from './rules/initials';
import type { StaffInput } from './staff-input';

export type StaffChange = StaffInput & { isActive: boolean };

/**
 * Changes what is known of a member of staff, what they may do, and whether they may sign in at all.
 * Deactivating ends their sessions. Refuses to leave the workshop without an active owner.
 */
export async function changeStaff(id: string, change: StaffChange): Promise<void> {
  const { name, email, role, isActive } = change;
  const initials = change.initials ?? initialsOf(name);
  try {
    await transaction(async (tx) => {
      await refuseWithoutOwner(tx, id, change);
      await refuseTaken(tx, { email, initials }, id);
      const { count } = await tx.user.updateMany({
        where: { id },
        data: { name, email, initials, role, isActive },
      });
      if (count === 0) throw new Refusal('not-found', 'This person is no longer on the list');
      if (!isActive) await tx.session.deleteMany({ where: { userId: id } });
    });
  } catch (error) {
    if (isUniqueViolation(error, 'auth_user_email_key')) throw emailTaken();
    throw error;
  }
}

// Two owners who step down at the same moment race for the last place. Both lock every active owner, in the same order
// so that neither waits for the other crosswise; the second gets its rows when the first has committed, no longer finds
// the other among the active owners, and is refused.
async function refuseWithoutOwner(tx: Tx, id: string, change: StaffChange): Promise<void> {
  if (change.role === 'owner' && change.isActive) return;
  const owners = await tx.$queryRaw<{ id: string }[]>`
    SELECT "id" FROM "auth_user" WHERE "role" = 'owner' AND "isActive" ORDER BY "id" FOR UPDATE`;
  if (owners.some((owner) => owner.id === id) && owners.length === 1) {
    throw new Refusal('conflict', 'This is the last active owner. Make somebody else an owner first', 'role');
  }
}
