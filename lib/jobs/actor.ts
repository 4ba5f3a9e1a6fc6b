import type { MoveBy } from './rules/stages';

/** Who does something to a job. Ids go into the history, names never. */
export type Actor =
  | { kind: 'customer' }
  | { kind: 'staff' | 'owner'; id: string; initials: string }
  | { kind: 'clock' };

export function moveBy(actor: Actor): MoveBy {
  return actor.kind;
}

export function actorId(actor: Actor): string | null {
  return actor.kind === 'staff' || actor.kind === 'owner' ? actor.id : null;
}
