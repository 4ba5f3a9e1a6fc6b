import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import { createAccount } from '@/lib/people/create-account';
import { hashPassword } from '@/lib/people/password-hash';

export type Hand = Extract<Actor, { id: string }>;
export type Hands = { owner: Hand; bench: Hand; front: Hand };
export type HandName = keyof Hands;

/** Staff beside the owner. The passwords are no secrets: they stand in the README and only in demonstrations. */
export const DEMO_STAFF = [
  {
    name: 'Wren Tarrick',
    initials: 'WT',
    email: 'wren@quayandalder.example.org',
    role: 'bench',
    password: 'capstan-flux-teacup',
  },
  {
    name: 'Ottoline Passmoor',
    initials: 'OP',
    email: 'ottoline@quayandalder.example.org',
    role: 'front',
    password: 'parcel-string-beacon',
  },
] as const;

/** Adds the staff and returns everybody who works there, the owner who was there first included. */
export async function hireStaff(): Promise<Hands> {
  const hired = new Map<string, Hand>();
  for (const { password, ...person } of DEMO_STAFF) {
    const passwordHash = await hashPassword(password);
    const id = await transaction((tx) => createAccount(tx, { ...person, passwordHash }));
    hired.set(person.role, { kind: 'staff', id, initials: person.initials });
  }
  const owner = await db.user.findFirstOrThrow({
    where: { role: 'owner' },
    select: { id: true, initials: true },
  });
  const bench = hired.get('bench');
  const front = hired.get('front');
  if (!bench || !front)
    throw new Error('the demonstration needs somebody at the bench and at the front desk');
  return { owner: { kind: 'owner', ...owner }, bench, front };
}
