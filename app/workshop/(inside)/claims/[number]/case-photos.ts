import type { PhotoProps } from '@/app/ui/photos/photo';
import { formatInstant } from '@/lib/calendar/format';
import type { JobRecord } from '@/lib/jobs/records';
import type { WorkshopCard } from '@/lib/workshop/card';

type JobPhoto = JobRecord['photos'][number];

const PURPOSES: Record<string, string> = {
  arrival: 'On arrival',
  serial: 'The serial',
  finding: 'Finding',
  work: 'The work',
  proof: 'The proof',
  claim: 'From the customer',
  inspection: 'Inspection',
  message: 'From the customer',
};

/** What a photo shows, in words: its caption, or its purpose. */
export function photoWords(photo: JobPhoto): string {
  return photo.caption || (PURPOSES[photo.purpose] ?? 'Photo');
}

/** A photo of either job as the claims desk shows it, small or whole. */
export function casePhoto(photo: JobPhoto, workshop: WorkshopCard, size: 'thumb' | 'whole'): PhotoProps {
  const address = `/workshop/photo/${photo.id}`;
  const when = formatInstant(photo.at, { locale: workshop.locale, zone: workshop.timeZone });
  return {
    src: size === 'thumb' ? `${address}?size=thumb` : address,
    full: address,
    alt: `${photoWords(photo)}, ${when}`,
    width: photo.width,
    height: photo.height,
    caption: `${photoWords(photo)}, ${when}`,
  };
}

/** The photo to begin a comparison with: the first of the wanted purposes that there is, the newest of its kind. */
export function firstChoice(photos: readonly JobPhoto[], purposes: readonly string[]): JobPhoto | undefined {
  for (const purpose of purposes) {
    const found = photos.findLast((photo) => photo.purpose === purpose);
    if (found) return found;
  }
  return photos.at(-1);
}
