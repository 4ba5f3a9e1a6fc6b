import type { Stamp } from '@/app/ui/docket/stamps';
import { dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import type { QuoteRecord } from '@/lib/quotes/records';
import { REQUEST_WORDS, type RequestState } from '@/lib/quotes/rules/request-states';

const RUN = [
  { key: 'asked', label: 'Price asked', event: 'asked' },
  { key: 'quoted', label: 'Price sent', event: 'sent' },
  { key: 'accepted', label: 'Accepted', event: 'decided' },
  { key: 'booked', label: 'Booked', event: 'booked' },
] as const;

/** Where in the run each state stands; a question is part of the first stamp. */
const PLACE: Record<RequestState, number> = {
  asked: 0,
  questioned: 0,
  quoted: 1,
  lapsed: 1,
  'turned-down': 0,
  declined: 1,
  accepted: 2,
  booked: 3,
};

const ENDED: readonly RequestState[] = ['declined', 'lapsed', 'turned-down'];

/** The run of stamps of a quote: from the request to the booking, or to where it ended. */
export function quoteStamps(quote: QuoteRecord, o: { locale: string; timeZone: string }): Stamp[] {
  const { state } = quote.request;
  const place = PLACE[state];
  const isOver = ENDED.includes(state);
  const on = (kind: string) => {
    const event = quote.events.findLast((each) => each.kind === kind);
    return event ? formatDay(dayInZone(event.at, o.timeZone), o.locale, 'short') : undefined;
  };
  const steps = RUN.slice(0, isOver ? place + 1 : RUN.length).map(({ key, label, event }, index): Stamp => {
    const isDone = index < place || isOver || state === 'booked';
    return {
      key,
      label,
      state: isDone ? 'done' : index === place ? 'now' : 'waiting',
      on: index <= place ? on(event) : undefined,
    };
  });
  if (!isOver) return steps;
  const last = quote.events.at(-1);
  return [
    ...steps,
    {
      key: state,
      label: REQUEST_WORDS[state].label,
      state: 'stopped',
      on: last ? formatDay(dayInZone(last.at, o.timeZone), o.locale, 'short') : undefined,
    },
  ];
}
