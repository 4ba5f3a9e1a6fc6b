import { type Tx, transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { temporaryUntil } from './add-staff';
import { hashPassword } from './password-hash';
import { newPassword } from './random';
import { markTemporaryPassword } from './temporary-password';

export type ResetOptions = {
  now: Date;
  isSecondStepOff: boolean;
  /** null: the command on the machine */
  by: { id: string } | null;
};

/**
 * Gives a member of staff a temporary password and ends their sessions, so that a lost or stolen device stays out.
 * The owner starts this but does not choose the password (ASVS 5.0 6.4.6). With `isSecondStepOff` the second step is
 * taken away too, for a person who has lost the phone and the backup codes. Nobody does it to themselves: the page that shows the
 * password would end with their session.
 */
export async function resetPassword(
  id: string,
  options: ResetOptions,
): Promise<{ temporaryPassword: string }> {
  if (id === options.by?.id) throw new Refusal('conflict', 'Change your own password on your account page.');
  const temporaryPassword = newPassword();
  const password = await hashPassword(temporaryPassword);
  await transaction(async (tx) => {
    const { count } = await tx.account.updateMany({
      where: { userId: id, providerId: 'credential' },
      data: { password },
    });
    if (count === 0) throw new Refusal('not-found', 'This person is no longer on the list');
    await markTemporaryPassword(tx, id, temporaryUntil(options.now));
    await tx.session.deleteMany({ where: { userId: id } });
    if (options.isSecondStepOff) await takeSecondStepOff(tx, id);
  });
  return { temporaryPassword };
}

async function takeSecondStepOff(tx: Tx, userId: string): Promise<void> {
  await tx.twoFactor.deleteMany({ where: { userId } });
  await tx.user.update({ where: { id: userId }, data: { twoFactorEnabled: false } });
}
