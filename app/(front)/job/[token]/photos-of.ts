import type { PhotoProps } from '@/app/ui/photos/photo';
import type { JobRecord } from '@/lib/jobs/records';
import { readMarks } from '@/lib/jobs/rules/photo-marks';

type JobPhoto = JobRecord['photos'][number];

const SHOWN: Record<string, string> = {
  arrival: 'Your unit as it arrived',
  serial: 'Its serial',
  finding: 'What we found',
  work: 'The work',
  proof: 'The proof',
  claim: 'Your photo',
  inspection: 'The inspection',
  message: 'Your photo',
  receipt: 'Your receipt for the postage',
};

/** Of photos that the workshop added to a claim for its customer. */
export const SENT_OTHERWISE = 'What you sent us';

/** Whether the workshop added a claim's photo: a letter, or pictures that came by mail. What it took of the unit itself is of its arrival. */
export function isSentOtherwise({ purpose, userId }: JobPhoto): boolean {
  return purpose === 'claim' && userId !== null;
}

/**
 * Photos of a job as the private page shows them. Thumbnails keep the proportions of the whole photo. `saying`: what is known of
 * a photo beside what it was taken for.
 */
export function photosOf(
  job: JobRecord,
  token: string,
  wanted: (photo: JobPhoto) => boolean,
  saying: (photo: JobPhoto) => string | undefined = () => undefined,
): PhotoProps[] {
  return job.photos.filter(wanted).map((photo, index) => {
    const said = photo.caption || saying(photo);
    const shown = isSentOtherwise(photo) ? SENT_OTHERWISE : SHOWN[photo.purpose];
    return {
      src: `/job/${token}/photo/${photo.id}?size=thumb`,
      full: `/job/${token}/photo/${photo.id}`,
      alt: said || `${shown ?? 'Photo'}, picture ${index + 1}`,
      width: photo.width,
      height: photo.height,
      caption: said || shown,
      marks: readMarks(photo.marks),
    };
  });
}
