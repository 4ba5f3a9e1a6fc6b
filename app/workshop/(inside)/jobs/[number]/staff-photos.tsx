import { TextLink } from '@/app/ui/page/text-link';
import type { PhotoProps } from '@/app/ui/photos/photo';
import type { JobRecord } from '@/lib/jobs/records';
import { readMarks } from '@/lib/jobs/rules/photo-marks';

/** Photos of a job as the workshop's pages show them, each with its marks and the way to put some. */
export function staffPhotos(
  job: JobRecord,
  wanted: (photo: JobRecord['photos'][number]) => boolean,
): PhotoProps[] {
  return job.photos.filter(wanted).map((photo, index) => ({
    src: `/workshop/photo/${photo.id}?size=thumb`,
    full: `/workshop/photo/${photo.id}`,
    alt: photo.caption || `Photo ${index + 1}, ${photo.purpose}`,
    width: photo.width,
    height: photo.height,
    marks: readMarks(photo.marks),
    caption: (
      <>
        {photo.caption || photo.purpose}.{' '}
        <TextLink
          href={`/workshop/jobs/${job.number}/photos/${photo.id}`}
          className="inline-block py-1"
          aria-label={`Caption and marks of photo ${index + 1}, ${photo.caption || photo.purpose}`}
        >
          Describe
        </TextLink>
      </>
    ),
  }));
}
