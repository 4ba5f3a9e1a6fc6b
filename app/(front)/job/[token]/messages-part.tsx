import { newFormKey } from '@/app/form-key';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { Timeline } from '@/app/ui/page/timeline';
import { formatInstant } from '@/lib/calendar/format';
import { workingDaysWords } from '@/lib/calendar/working';
import { writeMessage } from './actions';
import type { PartProps } from './part-props';

export function MessagesPart({ job, token, workshop }: PartProps) {
  return (
    <section aria-labelledby="messages">
      <h2 id="messages">Messages</h2>
      {job.messages.length > 0 ? (
        <Timeline
          label="Messages"
          entries={job.messages.map((message) => ({
            key: message.id,
            dateTime: message.at.toISOString(),
            on: formatInstant(message.at, { locale: workshop.locale, zone: workshop.timeZone }),
            who: message.author === 'customer' ? 'You' : workshop.name,
            what: <span className="written">{message.text}</span>,
          }))}
        />
      ) : null}
      <ActionForm action={writeMessage.bind(null, token)} hidden={{ formKey: newFormKey() }} label="Message">
        <TextArea name="text" label="Write to us about this unit" maxLength={4000} rows={4} />
        <SubmitButton
          label="Send the message"
          kind="second"
          consequence={`A person reads it and answers here and by mail within ${workingDaysWords(workshop.answerDays)}.`}
        />
      </ActionForm>
    </section>
  );
}
