import { parseEvent } from './events';

type Happened = { kind: string; data: unknown };

/** The number of the job that was opened first for the parcel a booking was last taken in with; null where none was. */
export function openedFirst(events: readonly Happened[]): string | null {
  const last = events.findLast(({ kind }) => kind === 'unit-arrived');
  const event = last && parseEvent('unit-arrived', last.data);
  return event?.kind === 'unit-arrived' ? (event.data.openedAs ?? null) : null;
}
