import { newFormKey } from '@/app/form-key';
import { ActionForm } from '@/app/ui/forms/action-form';
import { PhotosField } from '@/app/ui/forms/photos-field';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { PhotoStrip } from '@/app/ui/photos/photo';
import { MOST_PHOTOS } from '@/lib/jobs/rules/most-photos';
import { Messages, messageConsequence } from '../../messages';
import { writeMessage } from './actions';
import type { PartProps } from './part-props';
import { photosOf } from './photos-of';

export function MessagesPart({ job, token, workshop }: PartProps) {
  const photosAt = (id: string) => {
    const photos = photosOf(job, token, ({ messageId }) => messageId === id);
    return photos.length > 0 ? <PhotoStrip label="Photos of this message" photos={photos} /> : null;
  };
  return (
    <Messages messages={job.messages} workshop={workshop} detail={photosAt}>
      <ActionForm action={writeMessage.bind(null, token)} hidden={{ formKey: newFormKey() }} label="Message">
        <TextArea name="text" label="Write to us about this unit" maxLength={4000} rows={4} />
        <PhotosField label="Photos that show it" most={MOST_PHOTOS} optional />
        <SubmitButton label="Send the message" kind="second" consequence={messageConsequence(workshop)} />
      </ActionForm>
    </Messages>
  );
}
