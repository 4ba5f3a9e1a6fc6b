import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { Timeline } from '@/app/ui/page/timeline';
import { formatInstant } from '@/lib/calendar/format';
import { quoteEventLine } from '@/lib/quotes/rules/quote-events';
import { STAFF_MAY_WRITE } from '@/lib/quotes/rules/request-states';
import { readWords } from '../../read-words';
import { writeMessage } from './actions';
import type { QuotePartProps } from './open-quote';

export function MessagesPart({ quote, workshop, staff }: QuotePartProps) {
  const mayWrite = STAFF_MAY_WRITE.includes(quote.request.state);
  if (quote.messages.length === 0 && !mayWrite) return null;
  const clock = { locale: workshop.locale, zone: workshop.timeZone };
  return (
    <section id="messages" aria-labelledby="messages-head">
      <h2 id="messages-head">Messages</h2>
      {quote.messages.length > 0 ? (
        <Timeline
          label="Messages"
          entries={quote.messages.map((message) => ({
            key: message.id,
            dateTime: message.at.toISOString(),
            on: formatInstant(message.at, clock),
            who: message.userId ? staff.get(message.userId)?.name : quote.request.name,
            what: (
              <>
                <span className="written">{message.text}</span>
                {message.author === 'staff' ? (
                  <span className="block text-small text-soft">{readWords(message.readAt, clock)}</span>
                ) : null}
              </>
            ),
          }))}
        />
      ) : null}
      {mayWrite ? (
        <ActionForm
          action={writeMessage.bind(null, quote.number)}
          hidden={{ version: quote.version }}
          label="Write to the customer"
        >
          <TextArea name="text" label="Write to the customer" rows={3} maxLength={4000} />
          <SubmitButton
            kind="second"
            label="Send the message"
            consequence="Goes out by mail too. The price stays as it is."
          />
        </ActionForm>
      ) : null}
    </section>
  );
}

const WHO: Record<string, string> = { customer: 'the customer', clock: 'the clock' };

export function HistoryPart({ quote, workshop, staff }: QuotePartProps) {
  return (
    <section id="history" aria-labelledby="history-head">
      <h2 id="history-head">History</h2>
      <Timeline
        label="Everything that happened to this quote"
        entries={quote.events.toReversed().map((event) => ({
          key: event.id,
          dateTime: event.at.toISOString(),
          on: formatInstant(event.at, { locale: workshop.locale, zone: workshop.timeZone }),
          who: event.actorId ? (staff.get(event.actorId)?.name ?? 'staff') : WHO[event.actorKind],
          what: quoteEventLine(event.kind, event.data),
        }))}
      />
    </section>
  );
}
