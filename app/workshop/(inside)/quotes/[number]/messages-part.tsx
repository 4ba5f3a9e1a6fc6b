import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { quoteEventLine } from '@/lib/quotes/rules/quote-events';
import { STAFF_MAY_WRITE } from '@/lib/quotes/rules/request-states';
import { SettleForms } from '../../settle-forms';
import { EventTimeline, MessageTimeline } from '../../timelines';
import { newQuoteLink, settleWords, writeMessage } from './actions';
import type { QuotePartProps } from './open-quote';

export function MessagesPart({ quote, workshop, staff }: QuotePartProps) {
  const mayWrite = STAFF_MAY_WRITE.includes(quote.request.state);
  if (quote.messages.length === 0 && !mayWrite) return null;
  const clock = { locale: workshop.locale, zone: workshop.timeZone };
  return (
    <section id="messages" aria-labelledby="messages-head">
      <h2 id="messages-head">Messages</h2>
      <MessageTimeline messages={quote.messages} customer={quote.request.name} staff={staff} clock={clock} />
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
      {mayWrite ? (
        <SettleForms
          messages={quote.messages}
          action={settleWords.bind(null, quote.number)}
          version={quote.version}
        />
      ) : null}
    </section>
  );
}

export function HistoryPart({ quote, workshop, staff }: QuotePartProps) {
  return (
    <section id="history" aria-labelledby="history-head">
      <h2 id="history-head">History</h2>
      <EventTimeline
        label="Everything that happened to this quote"
        events={quote.events}
        lineOf={(event) => quoteEventLine(event.kind, event.data)}
        staff={staff}
        clock={{ locale: workshop.locale, zone: workshop.timeZone }}
      />
      {quote.request.email === '' ? null : (
        <ActionForm
          action={newQuoteLink.bind(null, quote.number)}
          hidden={{ version: quote.version }}
          label="Private link"
        >
          <ConfirmButton
            label="Renew the private link"
            question="Withdraw every link to this quote and send the customer a new one?"
            confirm="Yes, send a new link"
            consequence="Links in earlier mails stop working at once."
          />
        </ActionForm>
      )}
    </section>
  );
}
