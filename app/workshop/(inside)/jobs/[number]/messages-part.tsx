import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { lastWaiting } from '@/lib/jobs/rules/settled';
import { SettleForms } from '../../settle-forms';
import { MessageTimeline } from '../../timelines';
import { settleWords, writeToCustomer } from './actions';
import { carriedFields } from './carried-fields';
import type { SheetProps } from './open-sheet';
import { staffPhotos } from './staff-photos';

export function MessagesPart({ job, workshop, staff }: SheetProps) {
  const clock = { locale: workshop.locale, zone: workshop.timeZone };
  const last = lastWaiting(job.messages);
  return (
    <section id="messages" aria-labelledby="messages-head">
      <h2 id="messages-head">Messages</h2>
      <MessageTimeline
        messages={job.messages}
        customer={job.customer.name}
        staff={staff}
        clock={clock}
        photosAt={(id) => staffPhotos(job, ({ messageId }) => messageId === id)}
      />
      {job.customer.erasedAt ? (
        <p>The data of this customer was removed: nobody is left to write to.</p>
      ) : (
        <ActionForm
          action={writeToCustomer.bind(null, job.number)}
          hidden={{ ...carriedFields(job.version), seen: last?.id ?? '' }}
          label="Message"
          summary="Write to the customer"
          isOpen={last !== null}
        >
          <TextArea name="text" label="Message" maxLength={4000} rows={4} />
          <SubmitButton label="Send the message" consequence="Goes to the private page and by mail." />
        </ActionForm>
      )}
      <SettleForms
        messages={job.messages}
        action={settleWords.bind(null, job.number)}
        version={job.version}
      />
    </section>
  );
}
