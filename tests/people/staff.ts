import { vi } from 'vitest';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { auth } from '@/lib/people/auth';
import { createAccount } from '@/lib/people/create-account';
import { hashPassword } from '@/lib/people/password-hash';
import type { Role } from '@/lib/people/rules/roles';

export const PASSWORD = 'seven pears at low tide';

// A password is hashed in a fifth of a second of a processor; some tests do it twelve times, on a busy machine.
vi.setConfig({ testTimeout: 120_000 });

// Hashing takes a fifth of a second by design; one hash serves all the people of a file.
let hash: Promise<string> | undefined;

/** An account that signs in with PASSWORD; its address is `<first name>@example.org`. */
export async function makeStaff(name: string, role: Role): Promise<{ id: string; email: string }> {
  hash ??= hashPassword(PASSWORD);
  const passwordHash = await hash;
  const email = `${name.toLowerCase().split(' ')[0]}@example.org`;
  const initials = name.slice(0, 2).toUpperCase();
  const id = await transaction((tx) => createAccount(tx, { name, email, role, initials, passwordHash }));
  return { id, email };
}

/** Whether somebody has to choose a password of their own before anything else. */
export async function mustReplacePassword(id: string): Promise<boolean> {
  return (await db.user.findUniqueOrThrow({ where: { id } })).hasTemporaryPassword;
}

/** Signs in by the library itself and returns the request headers that the browser would send from then on. */
export async function headersAfterSignIn(email: string, password = PASSWORD): Promise<Headers> {
  const { headers } = await auth().api.signInEmail({
    body: { email, password },
    headers: new Headers(),
    returnHeaders: true,
  });
  return withCookiesOf(headers);
}

/** Cookies set by an answer, as the next request sends them back. */
export function withCookiesOf(answer: Headers): Headers {
  const pairs = answer.getSetCookie().map((cookie) => cookie.split(';')[0] ?? '');
  return new Headers({ cookie: pairs.filter((pair) => !pair.endsWith('=')).join('; ') });
}
