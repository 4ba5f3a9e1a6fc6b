import { Timeline } from '@/app/ui/page/timeline';
import { type PhotoProps, PhotoStrip } from '@/app/ui/photos/photo';
import { formatInstant } from '@/lib/calendar/format';
import { SETTLED_BY, SETTLED_WORDS } from '@/lib/jobs/rules/settled';
import { readWords } from './read-words';

type Clock = { locale: string; zone: string };
type Staff = ReadonlyMap<string, { name: string }>;

type Message = {
  id: string;
  at: Date;
  author: string;
  userId: string | null;
  text: string;
  readAt: Date | null;
  settledById: string | null;
  settledHow: string | null;
  settledNote: string;
};

/** Messages of a job or a quote as the workshop sees them, with what is known of their being read. */
export function MessageTimeline(props: {
  messages: readonly Message[];
  customer: string;
  staff: Staff;
  clock: Clock;
  /** photos that came with a message, by its id */
  photosAt?: (messageId: string) => readonly PhotoProps[];
}) {
  const { messages, customer, staff, clock, photosAt } = props;
  if (messages.length === 0) return null;
  return (
    <Timeline
      label="Messages"
      entries={messages.map((message) => ({
        key: message.id,
        dateTime: message.at.toISOString(),
        on: formatInstant(message.at, clock),
        who: message.userId ? staff.get(message.userId)?.name : customer,
        what: (
          <>
            <span className="written">{message.text}</span>
            <span className="block text-small text-soft">
              {message.author === 'staff' ? readWords(message.readAt, clock) : settledWords(message, staff)}
            </span>
          </>
        ),
        detail: photosAt && <PhotoStrip label="Photos of this message" photos={photosAt(message.id)} />,
      }))}
    />
  );
}

/** How words of the customer were settled without writing to them, and by whom. */
function settledWords({ settledById, settledHow, settledNote }: Message, staff: Staff): string | null {
  const how = SETTLED_BY.find((known) => known === settledHow);
  if (how === undefined) return null;
  const by = settledById === null ? undefined : staff.get(settledById)?.name;
  const note = settledNote === '' ? '' : `: ${settledNote}`;
  return `${SETTLED_WORDS[how]}${note}${by === undefined ? '' : ` (${by})`}`;
}

const WHO: Record<string, string> = { customer: 'the customer', clock: 'the clock' };

type StoredEvent = { id: string; at: Date; actorKind: string; actorId: string | null };

/** Everything that happened to a job or a quote, the newest first; `lineOf` puts one event into words. */
export function EventTimeline<E extends StoredEvent>(props: {
  label: string;
  events: readonly E[];
  lineOf: (event: E) => string;
  staff: Staff;
  clock: Clock;
}) {
  const { label, events, lineOf, staff, clock } = props;
  return (
    <Timeline
      label={label}
      entries={events.toReversed().map((event) => ({
        key: event.id,
        dateTime: event.at.toISOString(),
        on: formatInstant(event.at, clock),
        who: event.actorId ? (staff.get(event.actorId)?.name ?? 'staff') : WHO[event.actorKind],
        what: lineOf(event),
      }))}
    />
  );
}
