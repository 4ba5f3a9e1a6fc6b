import { type Day, day } from '@/lib/calendar/day';
import { parseEvent } from '@/lib/jobs/rules/events';

type Happened = { kind: string; at: Date; toStage: string | null; data: unknown };

/**
 * The day a job was promised for before its last price lapsed, as long as the promise stands as the lapse left it; null where it was
 * moved since, or nothing lapsed. `promisedOn` is what it is promised for now. Events in their order.
 *
 * lapsed, promise-moved from 2 to 5 January in the same moment -> 2 January; lapsed and not moved -> `promisedOn`
 */
export function promisedBeforeLapse(events: readonly Happened[], promisedOn: Day): Day | null {
  const index = events.findLastIndex(({ kind, toStage }) => kind === 'offer-lapsed' && toStage !== null);
  const lapse = events[index];
  if (!lapse) return null;
  const [moved, ...more] = events.slice(index).filter(({ kind }) => kind === 'promise-moved');
  if (!moved) return promisedOn;
  if (more.length > 0 || moved.at.getTime() !== lapse.at.getTime()) return null;
  const event = parseEvent('promise-moved', moved.data);
  return event.kind === 'promise-moved' && event.data.from !== null ? day(event.data.from) : null;
}
