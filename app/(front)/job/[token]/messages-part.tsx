import { newFormKey } from '@/app/form-key';
import { ActionForm } from '@/app/ui/forms/action-form';
import { PhotosField } from '@/app/ui/forms/photos-field';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { Timeline } from '@/app/ui/page/timeline';
import { PhotoStrip } from '@/app/ui/photos/photo';
import { formatInstant } from '@/lib/calendar/format';
import { workingDaysWords } from '@/lib/calendar/working';
import { MOST_PHOTOS } from '@/lib/jobs/rules/most-photos';
import { writeMessage } from './actions';
import type { PartProps } from './part-props';
import { photosOf } from './photos-of';

export function MessagesPart({ job, token, workshop }: PartProps) {
  const photosAt = (id: string) => {
    const photos = photosOf(job, token, ({ messageId }) => messageId === id);
    return photos.length > 0 ? <PhotoStrip label="Photos of this message" photos={photos} /> : null;
  };
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
            detail: photosAt(message.id),
          }))}
        />
      ) : null}
      <ActionForm action={writeMessage.bind(null, token)} hidden={{ formKey: newFormKey() }} label="Message">
        <TextArea name="text" label="Write to us about this unit" maxLength={4000} rows={4} />
        <PhotosField label="Photos that show it" most={MOST_PHOTOS} maxMegabytes={15} optional />
        <SubmitButton
          label="Send the message"
          kind="second"
          consequence={`A person reads it and answers here and by mail within ${workingDaysWords(workshop.answerDays)}.`}
        />
      </ActionForm>
    </section>
  );
}
