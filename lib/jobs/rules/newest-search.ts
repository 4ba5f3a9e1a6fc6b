import { parseEvent } from './events';
import { type ParcelSearch, SEARCH_EVENTS } from './parcel-search';

const TELLS: ReadonlySet<string> = new Set(SEARCH_EVENTS);

/** How the newest search for a parcel stands, by a job's events in their order; null where none was begun, or the unit is here. */
export function parcelSearch(events: readonly { kind: string; data: unknown }[]): ParcelSearch | null {
  const last = events.findLast(({ kind }) => TELLS.has(kind));
  if (last?.kind === 'parcel-sought') {
    const event = parseEvent('parcel-sought', last.data);
    return event.kind === 'parcel-sought' ? { state: 'sought', note: event.data.note } : null;
  }
  if (last?.kind !== 'search-ended') return null;
  const event = parseEvent('search-ended', last.data);
  return event.kind === 'search-ended' ? { state: event.data.how, note: event.data.note } : null;
}
