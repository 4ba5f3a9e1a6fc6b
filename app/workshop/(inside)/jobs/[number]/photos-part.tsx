import { ActionForm } from '@/app/ui/forms/action-form';
import { FileField } from '@/app/ui/forms/file-field';
import { Select } from '@/app/ui/forms/select';
import { SubmitButton } from '@/app/ui/forms/submit';
import { PhotoStrip } from '@/app/ui/photos/photo';
import { readStage } from '@/lib/jobs/records';
import { MOST_PHOTOS } from '@/lib/jobs/rules/most-photos';
import { NOT_WITH_US } from '@/lib/jobs/rules/stage-sets';
import { addJobPhotos } from './actions';
import { carriedFields } from './carried-fields';
import type { SheetProps } from './open-sheet';
import { staffPhotos } from './staff-photos';

const KINDS = [
  { value: 'arrival', label: 'As it arrived' },
  { value: 'serial', label: 'The serial' },
  { value: 'finding', label: 'A finding' },
  { value: 'work', label: 'The work' },
  { value: 'proof', label: 'The proof' },
];

export function PhotosPart({ job }: SheetProps) {
  const isWithUs = !NOT_WITH_US.includes(readStage(job.stage));
  const photos = staffPhotos(
    job,
    ({ findingId, messageId, purpose }) => findingId === null && messageId === null && purpose !== 'receipt',
  );
  if (!isWithUs && photos.length === 0) return null;
  return (
    <section id="photos" aria-labelledby="photos-head">
      <h2 id="photos-head">Photos</h2>
      <PhotoStrip label="Photos of this unit" photos={photos} />
      {isWithUs ? (
        <ActionForm
          action={addJobPhotos.bind(null, job.number)}
          hidden={carriedFields(job.version)}
          label="Add photos"
          summary="Add photos"
        >
          <Select
            name="purpose"
            label="What do they show?"
            choices={KINDS}
            defaultValue={job.isSerialSettled ? 'work' : 'serial'}
          />
          <FileField name="photos" label="Photos" most={MOST_PHOTOS} camera />
          <SubmitButton
            label="Add the photos"
            consequence="Where they were taken is removed. The customer sees them."
          />
        </ActionForm>
      ) : null}
    </section>
  );
}
