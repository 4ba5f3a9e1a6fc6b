import type { Actor } from '@/lib/jobs/actor';
import type { Staff } from './who';

/** The signed-in person as the use cases and the history know them. */
export function staffActor(staff: Staff): Extract<Actor, { id: string }> {
  return { kind: staff.role === 'owner' ? 'owner' : 'staff', id: staff.id, initials: staff.initials };
}
