import { isUniqueViolation } from '@/lib/db/errors';
import { type Tx, transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { requireAsShown, type Shown } from '@/lib/shown-row';
import { emailTaken, refuseTaken } from './add-staff';
import { initialsOf } from './rules/initials';
import { STAFF_FIELDS, type StaffInput } from './staff-input';

export type StaffChange = StaffInput & { isActive: boolean };

/**
 * Changes what is known of a member of staff, what they may do, and whether they may sign in at all.
 * Deactivating ends their sessions. Refuses a form older than the account, so that whoever corrects a name does not give back
 * what another owner took away meanwhile, and refuses to leave the workshop without an active owner.
 */
export async function changeStaff(shown: Shown, change: StaffChange): Promise<void> {
  const { id } = shown;
  const { name, email, role, isActive } = change;
  const initials = change.initials ?? initialsOf(name);
  try {
    await transaction(async (tx) => {
      await refuseWithoutOwner(tx, id, change);
      await refuseOlderForm(tx, shown);
      await refuseTaken(tx, { email, initials }, id);
      await tx.user.update({ where: { id }, data: { name, email, initials, role, isActive } });
      if (!isActive) await tx.session.deleteMany({ where: { userId: id } });
    });
  } catch (error) {
    if (isUniqueViolation(error, 'auth_user_email_key')) throw emailTaken();
    throw error;
  }
}

// Two owners may have the same person open: the row is locked before it is compared with what each was shown, so the second
// finds what the first left and is told.
async function refuseOlderForm(tx: Tx, shown: Shown): Promise<void> {
  await tx.$queryRaw`SELECT 1 FROM "auth_user" WHERE "id" = ${shown.id} FOR UPDATE`;
  const before = await tx.user.findUnique({ where: { id: shown.id }, select: STAFF_FIELDS });
  requireAsShown(shown, STAFF_FIELDS, before, 'person');
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
