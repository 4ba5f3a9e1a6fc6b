import { type Tx, transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { temporaryUntil } from './add-staff';
import { hashPassword } from './password-hash';
import { newPassword } from './random';
import { markTemporaryPassword } from './temporary-password';

export type ResetOptions = { now: Date; isSecondStepOff: boolean };

/**
 * Gives a member of staff a temporary password and ends their sessions, so that a lost or stolen device stays out.
 * The owner starts this but does not choose the password (ASVS 5.0 6.4.6). With `isSecondStepOff` the second step is
 * taken away too, for a person who has lost the phone and the backup codes.
 */
export async function resetPassword(
  id: string,
  options: ResetOptions,
): Promise<{ temporaryPassword: string }> {
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
