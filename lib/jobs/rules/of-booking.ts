import { parseEvent } from './events';

type Happened = { kind: string; data: unknown };

/** The number of the job that was opened first for the parcel a booking was last taken in with; null where none was. */
export function openedFirst(events: readonly Happened[]): string | null {
  const last = lastTakenIn(events);
  const event = last && parseEvent('unit-arrived', last.data);
  return event?.kind === 'unit-arrived' ? (event.data.openedAs ?? null) : null;
}

/** The number of the booking under which the parcel of a job that was opened for it was taken in; null where it has none. */
export function bookingOf(events: readonly Happened[]): string | null {
  const ended = events.find(({ kind }) => kind === 'is-of-booking');
  const event = ended && parseEvent('is-of-booking', ended.data);
  return event?.kind === 'is-of-booking' ? event.data.booking : null;
}

/** When a unit was last taken in, and its customer told so: later than it came where a job was opened for its parcel first. */
export function takenInAt(events: readonly (Happened & { at: Date })[]): Date | null {
  return lastTakenIn(events)?.at ?? null;
}

function lastTakenIn<E extends Happened>(events: readonly E[]): E | undefined {
  return events.findLast(({ kind }) => kind === 'unit-arrived');
}
