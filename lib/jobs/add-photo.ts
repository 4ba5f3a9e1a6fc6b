import { transaction } from '@/lib/db/transaction';
import type { Actor } from './actor';
import { writeEvent } from './write-event';
import { idOfSent, writeOnce } from './write-once';
import { type NewPhoto, type PhotoPurpose, writePhotos } from './write-photos';

/** Adds photos to a job, each with its own line in the history. Sent twice, they are added once: the first one's id decides. */
export async function addPhotos(o: {
  jobId: string;
  purpose: PhotoPurpose;
  photos: readonly NewPhoto[];
  formKey?: string | undefined;
  actor: Actor;
  now: Date;
}): Promise<void> {
  const first = idOfSent(o.formKey, [o.jobId, o.purpose, o.photos.map(({ sha256 }) => sha256)]);
  const photos = o.photos.map((photo, place) => (place === 0 ? { ...photo, ...first } : photo));
  await writeOnce('photo_pkey', () =>
    transaction(async (tx) => {
      for (const photoId of await writePhotos(tx, { ...o, photos })) {
        await writeEvent(tx, {
          jobId: o.jobId,
          actor: o.actor,
          now: o.now,
          event: { kind: 'photo-added', data: { photoId, purpose: o.purpose } },
        });
      }
    }),
  );
}
