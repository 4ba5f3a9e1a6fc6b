import { randomUUID } from 'node:crypto';
import type { Tx } from '@/lib/db/transaction';
import type { Role } from './rules/roles';

export type NewAccount = {
  name: string;
  /** lower case */
  email: string;
  role: Role;
  initials: string;
  /** from hashPassword; hash before the transaction, it takes a fifth of a second */
  passwordHash: string;
};

/** Writes an account and its password as the auth library reads them; returns the account's id. */
export async function createAccount(tx: Tx, account: NewAccount): Promise<string> {
  const { passwordHash, ...person } = account;
  const id = randomUUID();
  await tx.user.create({ data: { id, ...person, emailVerified: true } });
  await tx.account.create({
    data: { id: randomUUID(), userId: id, providerId: 'credential', accountId: id, password: passwordHash },
  });
  return id;
}
