import type { PhotoProps } from '@/app/ui/photos/photo';
import type { JobRecord } from '@/lib/jobs/records';

/** Photos of a job as the workshop's pages show them. */
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
    caption: photo.caption || photo.purpose,
  }));
}
