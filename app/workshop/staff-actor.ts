import type { StaffActor } from '@/lib/jobs/actor';
import { actorKind } from '@/lib/people/rules/roles';
import type { Staff } from './who';

/** The signed-in person as the use cases and the history know them. */
export function staffActor(staff: Staff): StaffActor {
  return { kind: actorKind(staff.role), id: staff.id, initials: staff.initials };
}
