import { config } from '@/lib/config';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { createAccount } from './create-account';
import { hashPassword } from './password-hash';
import { newPassword } from './random';
import { markTemporaryPassword } from './temporary-password';

/** The owner in demonstrations. The password is no secret, so this account is made only where DEMO is on. */
export const demoOwner = {
  name: 'Rowan Alder',
  initials: 'RA',
  email: 'owner@quayandalder.example.org',
  password: 'lantern-ferry-solder',
} as const;

/**
 * Makes the first owner when there is none, and returns how to sign in, once; null when there is an owner already.
 *
 * With DEMO on (never by default in production) it is the known demonstration owner. Otherwise the address is that of
 * the workshop's mail, the password is drawn by chance and has to be replaced at the first sign-in. Two instances that
 * start together: the lock lets one through, the other then finds an owner.
 */
export async function ensureFirstOwner(): Promise<{ email: string; password: string } | null> {
  if ((await db.user.count({ where: { role: 'owner' } })) > 0) return null;
  const person = config.isDemo
    ? demoOwner
    : { name: 'Owner', initials: 'OW', email: mailAddress(config.mailFrom), password: newPassword() };
  const { password, ...shown } = person;
  const passwordHash = await hashPassword(password);
  return transaction(async (tx) => {
    await tx.$executeRaw`LOCK TABLE "auth_user" IN SHARE ROW EXCLUSIVE MODE`;
    if ((await tx.user.count({ where: { role: 'owner' } })) > 0) return null;
    const id = await createAccount(tx, { ...shown, role: 'owner', passwordHash });
    if (!config.isDemo) await markTemporaryPassword(tx, id, null);
    return { email: shown.email, password };
  });
}

// MAIL_FROM may carry a name: "Quay & Alder <workshop@example.org>".
function mailAddress(from: string): string {
  return (/<([^<>]+)>/.exec(from)?.[1] ?? from).trim().toLowerCase();
}
