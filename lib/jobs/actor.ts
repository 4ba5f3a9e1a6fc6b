import type { Day } from '@/lib/calendar/day';
import { Refusal } from '@/lib/outcome';
import type { MoveBy } from './rules/stages';
import { BY_TELLING, type Told, toldDayProblem } from './rules/told';

/** Who does something to a job. Ids go into the history, names never. */
export type Actor =
  | { kind: 'customer' }
  | { kind: 'staff' | 'owner'; id: string; initials: string }
  | { kind: 'clock' };

export type StaffActor = Extract<Actor, { id: string }>;

/** Who of the workshop does something, and when. */
export type ByStaff = { actor: StaffActor; now: Date };

/** The same of a job, at the version they saw. */
export type OnJob = ByStaff & { jobId: string; version: number };

/**
 * Who gives an answer that is the customer's to give: they on their page, where nobody is named, or staff to whom it was told, on
 * the version of the job that they saw.
 */
export type AnsweredBy =
  | { actor?: { kind: 'customer' }; told?: never }
  | {
      actor: StaffActor;
      told: Told;
      version: number;
      /** the last message of the customer that waited where it was written down; absent where none did */
      seen?: string | undefined;
    };

const CUSTOMER = { kind: 'customer' } as const;

/** Who writes an answer, and by whom it counts as given. */
export function answerer(o: AnsweredBy): {
  actor: Actor;
  by: 'customer' | typeof BY_TELLING;
  told: Told | undefined;
} {
  return o.told
    ? { actor: o.actor, by: BY_TELLING, told: o.told }
    : { actor: CUSTOMER, by: CUSTOMER.kind, told: undefined };
}

/**
 * Throws where an answer that was told cannot be written down: the job is not as whoever writes it saw it, or it cannot have been
 * given on that day. `since` is the first day on which it could, `until` the last day of a price that has lapsed.
 */
export function requireTold(
  o: AnsweredBy,
  on: { version: number; since: Day; until?: Day | undefined; today: Day; locale: string },
): void {
  if (!o.told) return;
  if (o.version !== on.version) {
    throw new Refusal('conflict', 'This job changed while you had it open. Nothing was written down.');
  }
  const problem = toldDayProblem({ on: o.told.on, ...on });
  if (problem !== null) throw new Refusal('invalid', problem, 'on');
}

export function moveBy(actor: Actor): MoveBy {
  return actor.kind;
}

export function actorId(actor: Actor): string | null {
  return actor.kind === 'staff' || actor.kind === 'owner' ? actor.id : null;
}
