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
    return {
      src: `/job/${token}/photo/${photo.id}?size=thumb`,
      full: `/job/${token}/photo/${photo.id}`,
      alt: said || `${SHOWN[photo.purpose] ?? 'Photo'}, picture ${index + 1}`,
      width: photo.width,
      height: photo.height,
      caption: said || SHOWN[photo.purpose],
      marks: readMarks(photo.marks),
    };
  });
}
