import { parseEvent } from './events';

type Happened = { kind: string; data: unknown };

/** The number of the job that was opened first for the parcel a booking was last taken in with; null where none was. */
export function openedFirst(events: readonly Happened[]): string | null {
  const last = lastTakenIn(events);
  const event = last && parseEvent('unit-arrived', last.data);
  return event?.kind === 'unit-arrived' ? (event.data.openedAs ?? null) : null;
}

/** When a unit was last taken in, and its customer told so: later than it came where a job was opened for its parcel first. */
export function takenInAt(events: readonly (Happened & { at: Date })[]): Date | null {
  return lastTakenIn(events)?.at ?? null;
}

function lastTakenIn<E extends Happened>(events: readonly E[]): E | undefined {
  return events.findLast(({ kind }) => kind === 'unit-arrived');
}
