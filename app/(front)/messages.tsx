import type { ReactNode } from 'react';
import { Timeline } from '@/app/ui/page/timeline';
import { formatInstant } from '@/lib/calendar/format';
import { workingDaysWords } from '@/lib/calendar/working';

type Message = { id: string; at: Date; author: string; text: string };

type MessagesProps = {
  messages: readonly Message[];
  workshop: { name: string; locale: string; timeZone: string };
  /** what stands under a message, by its id */
  detail?: (id: string) => ReactNode;
  /** the form to write more */
  children: ReactNode;
};

/** What customer and workshop wrote to each other, as a private page shows it to the customer. */
export function Messages({ messages, workshop, detail, children }: MessagesProps) {
  return (
    <section aria-labelledby="messages">
      <h2 id="messages">Messages</h2>
      {messages.length > 0 ? (
        <Timeline
          label="Messages"
          entries={messages.map((message) => ({
            key: message.id,
            dateTime: message.at.toISOString(),
            on: formatInstant(message.at, { locale: workshop.locale, zone: workshop.timeZone }),
            who: message.author === 'customer' ? 'You' : workshop.name,
            what: <span className="written">{message.text}</span>,
            detail: detail?.(message.id),
          }))}
        />
      ) : null}
      {children}
    </section>
  );
}

/** What becomes of a message, under the button that sends it. */
export function messageConsequence({ answerDays }: { answerDays: number }): string {
  return `A person reads it and answers here and by mail within ${workingDaysWords(answerDays)}.`;
}
